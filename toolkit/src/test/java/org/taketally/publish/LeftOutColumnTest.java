package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.answers.Estimate;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Interval;

/** Leaving the season or the grafter out of the records never loosens what a page holds back. */
class LeftOutColumnTest {

  private static final int CIRCLES = 20;
  private static final Pattern NAMES = Pattern.compile("\\b(?:Cv|St)\\d\\b");

  @TempDir private Path folder;

  /** The circle of {@link Sheets}, its grafts dealt to so many members. */
  private static String circle(int seed, int members) {
    String text = Sheets.circle(seed);
    for (int m = members; m < 6; m++) {
      text = text.replace("Qmember" + m, "Qmember" + m % members);
    }
    return text;
  }

  private static String without(String text, String column) {
    List<String[]> rows = text.lines().map(line -> line.split(",", -1)).toList();
    int left = Arrays.asList(rows.get(0)).indexOf(column);
    assertThat(left).as(column).isNotNegative();
    return rows.stream()
        .map(
            row ->
                IntStream.range(0, row.length)
                    .filter(i -> i != left)
                    .mapToObj(i -> row[i])
                    .collect(Collectors.joining(",")))
        .collect(Collectors.joining("\n", "", "\n"));
  }

  private static SeasonAdvice advice() {
    Estimate gain = new Estimate(0.2, new Interval(0.1, 0.3, 0.95));
    return new SeasonAdvice(
        Stream.of(List.of("Cv0", "Cv8"), List.of("St0", "St1"))
            .map(
                pair ->
                    new PreferLevels(
                        pair.get(0).startsWith("Cv") ? "cultivar" : "rootstock",
                        pair.subList(0, 1),
                        pair.subList(1, 2),
                        gain,
                        0.999,
                        90))
            .map(org.taketally.answers.advice.Advice.class::cast)
            .toList(),
        List.of());
  }

  private SeasonSummary page(String sheet, SummaryOptions options) {
    GraftRecords records = Sheets.read(folder, sheet);
    return SeasonSummary.of(records, CountedAnswers.of(records), advice(), options);
  }

  /** The rule written again, from the sheet with all its columns. */
  private static boolean mayBeShown(String sheet, String column, Predicate<String> level) {
    List<String[]> rows = sheet.lines().map(line -> line.split(",", -1)).toList();
    List<String> header = Arrays.asList(rows.get(0));
    Map<String, Integer> byMember = new HashMap<>();
    int grafts = 0;
    int takes = 0;
    for (String[] row : rows.subList(1, rows.size())) {
      if (level.test(row[header.indexOf(column)])) {
        int made = Integer.parseInt(row[header.indexOf("grafts")]);
        grafts += made;
        takes += Integer.parseInt(row[header.indexOf("takes")]);
        byMember.merge(row[header.indexOf("grafter")], made, Integer::sum);
      }
    }
    int people = takes == 0 || takes == grafts ? 5 : 3;
    int largest = byMember.values().stream().mapToInt(g -> g).max().orElse(0);
    return grafts >= 10 && byMember.size() >= people && largest <= 0.8 * grafts;
  }

  private static Set<String> named(String text) {
    return NAMES.matcher(text).results().map(MatchResult::group).collect(Collectors.toSet());
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 6})
  void without_the_season_only_lines_that_may_stand_by_themselves_are_named(int members) {
    int lines = 0;
    for (int seed = 0; seed < CIRCLES; seed++) {
      String whole = circle(seed, members);
      SeasonSummary summary = page(without(whole, "season"), SummaryOptions.defaults());
      Set<String> shown = new TreeSet<>();
      for (String column : List.of("cultivar", "rootstock")) {
        Set<String> alone = new TreeSet<>();
        summary
            .csv()
            .lines()
            .filter(line -> line.startsWith(column + ","))
            .map(line -> line.split(",", -1)[1])
            .filter(level -> NAMES.matcher(level).matches())
            .forEach(alone::add);
        for (String level : alone) {
          assertThat(mayBeShown(whole, column, level::equals))
              .as("%s of circle %d of %d members", level, seed, members)
              .isTrue();
        }
        boolean others = summary.csv().contains(column + ",other");
        if (others) {
          assertThat(mayBeShown(whole, column, level -> !alone.contains(level)))
              .as("the others of circle %d of %d members", seed, members)
              .isTrue();
        }
        shown.addAll(alone);
      }
      for (String form : List.of(summary.html(), summary.handout(), summary.markdown())) {
        assertThat(shown).as("circle " + seed).containsAll(named(form));
        assertThat(form).doesNotContain("Qmember", "Qsite", "Qnote");
      }
      lines += shown.size();
    }
    assertThat(lines).as("a page that shows nothing would pass").isPositive();
  }

  /** Not even with a number of members stated: it can't be known who stands behind a line. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 6})
  void without_the_grafter_no_count_and_no_name_is_given(int members) {
    SummaryOptions stated = SummaryOptions.defaults().members(6);
    for (int seed = 0; seed < CIRCLES; seed++) {
      String sheet = without(circle(seed, members), "grafter");
      assertThatThrownBy(() -> page(sheet, SummaryOptions.defaults()))
          .isInstanceOf(NothingToPublish.class);
      for (String less : List.of(sheet, without(sheet, "season"))) {
        SeasonSummary summary = page(less, stated);
        for (String form : List.of(summary.html(), summary.handout(), summary.markdown())) {
          assertThat(named(form)).as("circle " + seed).isEmpty();
          assertThat(form).doesNotContain("Qmember", "Qsite", "Qnote");
        }
        assertThat(summary.csv().lines()).as("only its headings").hasSize(1);
        assertThat(summary.pictures()).isEmpty();
        assertThat(summary.published().pages()).isEmpty();
      }
    }
  }

  @Test
  void a_column_left_out_after_a_first_page_gives_no_second_one_beside_it() {
    String whole = circle(1, 6);
    SeasonSummary first = page(whole, SummaryOptions.defaults());
    SummaryOptions second = SummaryOptions.defaults().members(6).before(first.published());

    assertThatThrownBy(() -> page(without(whole, "grafter"), second))
        .isInstanceOf(NothingToPublish.class);
  }
}
