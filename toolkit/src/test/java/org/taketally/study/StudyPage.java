package org.taketally.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.study.StudySummary.Claim;
import org.taketally.study.StudySummary.Row;
import org.taketally.terms.Interval;

/** docs/validation.md, from what the study found. */
final class StudyPage {

  private static final double PROMISED = 0.05;

  private final List<Row> rows;
  private final String draws;

  StudyPage(List<Row> rows, String draws) {
    this.rows = rows;
    this.draws = draws;
  }

  String text() {
    return """
    # How often is the verdict wrong?

    Made by `VerdictStudyTest` from %,d simulated trials of known truth in %d kinds. Each trial is written as a sheet and goes the usual way: read, the suggested model, the verdict, with a margin of 10 points. What is promised: each of these is wrong in at most 5 of 100 trials of any kind.

    | claim | said by | wrong where |
    |---|---|---|
    | matters | `matters` | the true gap is the margin or less, or a named stock isn't beyond it from any other |
    | equal | `no practical difference`, `differs, but less than you care about`, a named set of equals | two of those named truly lie the margin or more apart |
    | differ | `matters`, `differs, how much isn't settled`, `differs, but less than you care about` | all stocks are alike |
    | depends | `depends on the cultivar` | no two stocks lie the margin apart on single cultivars in both directions |

    **In all, %s.** %s Ranges meant to hold the truth in 94 of 100 held it in %.0f.

    **What the numbers of trials leave open.** %s Kinds in which a claim can be wrong were tried most often, those whose bound came to lie above 8 %% first; half and twice the margin, where only what is found counts, least. Of the trials made while a difference was still asked of a 97 %% range (98 %% now) those that had said of a difference, or named equals, were run anew; the others stayed, since a wider range says no more. A kind with few trials is not shown to keep the promise, only not shown to break it: 0 of 15 leaves up to 22 %% open, 20 of 400 up to 8 %%. The study can be continued at any time (see the end); by group of kinds it says more than by kind.

    ## By group of kinds, the worst first

    "94 %% ranges hold": how often the range of a single pair, which decides about equivalence, held the truth.

    | group | trials | wrong | 95 %% bounds | what was wrong | 94 %% ranges hold |
    |---|--:|--:|--:|---|--:|
    %s
    ## Every kind of trial, the worst first

    At exactly the margin `matters` and `no practical difference` are both wrong, and only there can a trial with two stocks go wrong either way.

    | kind | what is tried | true gap | trials | wrong | 95 %% bounds | what was wrong | matters | differs, how much isn't settled | differs, less than you care about | no practical difference | depends on the cultivar | can't tell yet | entangled | equals named | 94 %% ranges hold |
    |---|---|--:|--:|--:|--:|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|
    %s
    ## What the promise costs

    The first study (5,400 trials, before `matters` meant beyond the margin) in the same designs. There the claim of a difference was `matters`; here it is any of `matters`, `differs, how much isn't settled` and `differs, but less than you care about`. "Equal" is `no practical difference` or `differs, but less than you care about` for all, or a named set of equals.

    | design | true gap | difference said, first | now | equal said, first | now | trials now |
    |---|--:|--:|--:|--:|--:|--:|
    %s
    ## Are the posterior draws calibrated?

    500 studies with truths drawn from the prior (Talts et al. 2018): in which tenth of its draws each truth lies. Right draws put about 50 in each. The design stands in [validation-draws.md](validation-draws.md).

    %s
    ## What this can't show

    * Trials made by a model much like the one that judges them: it can't show what happens where an unrecorded circumstance goes with a rootstock.
    * Trays and fridge batches of one's own columns, mixed sheets of single and several grafts, and more than 12 rootstocks were not tried.
    * The chance of an answer at all: with few grafts most verdicts are `can't tell yet`, which is never wrong.

    ## Making it again, or continuing it

        java -cp ... org.taketally.study.StudyRun toolkit/src/test/resources/validation/verdict-study.csv TRIALS [KIND...]

    runs what is missing up to TRIALS trials of every kind whose name begins with one of KIND (all if none is named), a line a trial; stop it at any time. The class path is that of the tests. Then `./mvnw -Pquick test -Dtest=VerdictStudyTest -Dgolden=write` rewrites this page. Trials are seeded by kind and number; every build repeats some and compares verdicts.
    """
        .formatted(
            trials(rows),
            rows.size(),
            inAll(),
            breaking(),
            100 * held(rows),
            counts(),
            groups(),
            kinds(),
            FirstStudy.table(rows),
            draws);
  }

  private static int trials(List<Row> some) {
    return some.stream().mapToInt(r -> r.trials().size()).sum();
  }

  private static int wrong(List<Row> some) {
    return some.stream().mapToInt(Row::errors).sum();
  }

  private static double held(List<Row> some) {
    List<StudyTrial> all = some.stream().flatMap(row -> row.trials().stream()).toList();
    return all.stream().mapToInt(StudyTrial::inside).sum()
        / (double) all.stream().mapToInt(StudyTrial::ranges).sum();
  }

  private static String bounds(List<Row> some) {
    Interval likely = TakeRateInterval.clopperPearson(wrong(some), trials(some), 0.95);
    return "%.0f to %.0f %%".formatted(100 * likely.low(), 100 * likely.high());
  }

  private String inAll() {
    return String.format(
        Locale.ROOT,
        "%d of %,d trials said something that isn't so (%.1f %%, 95 %% bounds %s): %s",
        wrong(rows),
        trials(rows),
        100.0 * wrong(rows) / trials(rows),
        bounds(rows),
        claims(rows));
  }

  /** Which claims were wrong, and how often. */
  private static String claims(List<Row> some) {
    String claims =
        Arrays.stream(Claim.values())
            .map(c -> Map.entry(c, some.stream().mapToInt(row -> row.errors(c)).sum()))
            .filter(found -> found.getValue() > 0)
            .map(found -> found.getKey().word + " " + found.getValue())
            .collect(Collectors.joining(", "));
    return claims.isEmpty() ? "none" : claims;
  }

  private String breaking() {
    List<String> broken =
        rows.stream()
            .filter(row -> breaks(List.of(row)))
            .map(row -> row.kind().name())
            .collect(Collectors.toCollection(ArrayList::new));
    byGroup().entrySet().stream()
        .filter(group -> breaks(group.getValue()))
        .map(group -> "the group " + group.getKey())
        .forEach(broken::add);
    return broken.isEmpty()
        ? "No kind and no group of kinds is shown to break the promise (lower 95 % bound above 5"
            + " %)."
        : "**Shown to break the promise** (lower 95 % bound above 5 %): "
            + String.join(", ", broken)
            + ".";
  }

  private static boolean breaks(List<Row> some) {
    return TakeRateInterval.clopperPearson(wrong(some), trials(some), 0.95).low() > PROMISED;
  }

  private String counts() {
    int[] each = rows.stream().mapToInt(r -> r.trials().size()).sorted().toArray();
    long kept = rows.stream().filter(row -> row.likely().high() <= 0.08).count();
    return "Each kind was tried %d to %d times; %d of %d kinds have an upper bound of 8 %% or less."
        .formatted(each[0], each[each.length - 1], kept, each.length);
  }

  private Map<String, List<Row>> byGroup() {
    return rows.stream()
        .collect(
            Collectors.groupingBy(
                row -> row.kind().name().split(" ", 2)[0], TreeMap::new, Collectors.toList()));
  }

  private String groups() {
    return byGroup().entrySet().stream()
        .sorted(
            Comparator.comparingDouble(g -> -wrong(g.getValue()) / (double) trials(g.getValue())))
        .map(
            group ->
                "| %s | %d | %d | %s | %s | %s |%n"
                    .formatted(
                        group.getKey(),
                        trials(group.getValue()),
                        wrong(group.getValue()),
                        bounds(group.getValue()),
                        claims(group.getValue()),
                        percent(held(group.getValue()))))
        .collect(Collectors.joining());
  }

  private String kinds() {
    return rows.stream().map(StudyPage::line).collect(Collectors.joining());
  }

  private static String line(Row row) {
    return String.format(
        Locale.ROOT,
        "| %s | %s | %.0f | %d | %d | %s | %s | %d | %d | %d | %d | %d | %d | %d | %d | %s |%n",
        row.kind().name(),
        row.kind().says(),
        100 * row.kind().gap(),
        row.trials().size(),
        row.errors(),
        bounds(List.of(row)),
        claims(List.of(row)),
        row.verdict("MATTERS"),
        row.verdict("DIFFERS_UNSETTLED"),
        row.verdict("LESS_THAN_YOU_CARE_ABOUT"),
        row.verdict("NO_PRACTICAL_DIFFERENCE"),
        row.verdict("DEPENDS_ON_CULTIVAR"),
        row.verdict("CANT_TELL_YET"),
        row.verdict("ENTANGLED"),
        row.equalsNamed(),
        percent(row.coverage()));
  }

  private static String percent(double share) {
    return Double.isNaN(share) ? "" : String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }
}
