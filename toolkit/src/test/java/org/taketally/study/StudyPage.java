package org.taketally.study;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.taketally.study.StudySummary.Row;

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
    int trials = rows.stream().mapToInt(r -> r.trials().size()).sum();
    return """
    # How often is the verdict wrong?

    Made by `VerdictStudyTest` from %,d simulated trials of known truth in %d kinds. Each trial is written as a sheet and goes the usual way: read, the suggested model, the verdict, with a margin of 10 points. What is promised: each of these is wrong in at most 5 of 100 trials of any kind.

    | claim | wrong where |
    |---|---|
    | `matters` | the true gap is the margin or less, or a named stock isn't beyond it from any other |
    | `no practical difference`, `differs, but less than you care about`, a named set of equals | two of those named truly lie the margin or more apart |
    | `differs, how much isn't settled` | all stocks are alike |
    | `depends on the cultivar` | no two stocks lie the margin apart on single cultivars in both directions |

    **The promise is not kept yet.** Over all kinds %s of %s trials were wrong (%.0f %%), and ranges meant to hold the truth in 90 of 100 held it in %.0f. Shown to break the promise, their trials being what they are (lower 95 %% bound above 5 %%): %s. Until that is mended read `matters` and `no practical difference` near the margin with care: errors were mostly verdicts at exactly the margin.

    **The numbers of trials are small so far.** The bounds say what they leave open: a kind with few trials is not shown to keep the promise, only not shown to break it. Some 400 trials of each would show it; the study can be continued at any time (see the end).

    ## Every kind of trial, the worst first

    In "90 %% ranges hold" stands how often the range of a single pair, which decides about equivalence, held the truth.

    | kind | what is tried | true gap | trials | wrong | 95 %% bounds | matters | differs, how much isn't settled | differs, less than you care about | no practical difference | depends on the cultivar | can't tell yet | entangled | equals named | 90 %% ranges hold |
    |---|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|
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
            trials,
            rows.size(),
            wrong(),
            trials,
            100.0 * wrong() / trials,
            100 * held(),
            breaking(),
            table(),
            draws);
  }

  private int wrong() {
    return rows.stream().mapToInt(Row::errors).sum();
  }

  private double held() {
    List<StudyTrial> all = rows.stream().flatMap(row -> row.trials().stream()).toList();
    return all.stream().mapToInt(StudyTrial::inside).sum()
        / (double) all.stream().mapToInt(StudyTrial::ranges).sum();
  }

  private String breaking() {
    String kinds =
        rows.stream()
            .filter(row -> row.likely().low() > PROMISED)
            .map(row -> row.kind().name())
            .collect(Collectors.joining(", "));
    return kinds.isEmpty() ? "none" : kinds;
  }

  private String table() {
    StringBuilder text = new StringBuilder();
    rows.forEach(row -> text.append(line(row)));
    return text.toString();
  }

  private static String line(Row row) {
    int trials = row.trials().size();
    return String.format(
        Locale.ROOT,
        "| %s | %s | %.0f | %d | %d | %.0f to %.0f %% | %d | %d | %d | %d | %d | %d | %d | %d | %s"
            + " |%n",
        row.kind().name(),
        row.kind().says(),
        100 * row.kind().gap(),
        trials,
        row.errors(),
        100 * row.likely().low(),
        100 * row.likely().high(),
        row.verdict("MATTERS"),
        row.verdict("DIFFERS_UNSETTLED"),
        row.verdict("LESS_THAN_YOU_CARE_ABOUT"),
        row.verdict("NO_PRACTICAL_DIFFERENCE"),
        row.verdict("DEPENDS_ON_CULTIVAR"),
        row.verdict("CANT_TELL_YET"),
        row.verdict("ENTANGLED"),
        row.count(t -> !t.equivalent().isEmpty()),
        Double.isNaN(row.coverage())
            ? ""
            : String.format(Locale.ROOT, "%.0f %%", 100 * row.coverage()));
  }
}
