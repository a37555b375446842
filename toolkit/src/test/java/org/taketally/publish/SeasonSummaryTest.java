package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.survival.CountedRow;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLossCalculator;
import org.taketally.figure.SvgReader;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.publish.privacy.PublishedBefore;
import org.taketally.records.GraftRecords;
import tech.tablesaw.api.Row;

class SeasonSummaryTest {

  private static final int CIRCLES = 25;

  @TempDir private Path folder;

  private SeasonSummary summary(String sheet) {
    GraftRecords records = Sheets.read(folder, sheet);
    return SeasonSummary.of(records, CountedAnswers.of(records), SummaryOptions.defaults());
  }

  private static List<String> everyForm(SeasonSummary summary) {
    return List.of(summary.html(), summary.handout(), summary.markdown(), summary.csv());
  }

  @Test
  void no_member_site_or_note_is_ever_named() {
    for (int seed = 0; seed < CIRCLES; seed++) {
      for (String text : everyForm(summary(Sheets.circle(seed)))) {
        assertThat(text).as("circle " + seed).doesNotContain("Qmember", "Qsite", "Qnote");
      }
    }
  }

  /** Counted again from the records: grafts by member of every cultivar, rootstock and season. */
  @Test
  void every_level_named_anywhere_has_enough_grafts_and_members() {
    int withheld = 0;
    for (int seed = 0; seed < CIRCLES; seed++) {
      GraftRecords records = Sheets.read(folder, Sheets.circle(seed));
      SeasonSummary summary =
          SeasonSummary.of(records, CountedAnswers.of(records), SummaryOptions.defaults());
      for (String column : List.of("cultivar", "rootstock")) {
        for (Map.Entry<String, Map<String, Integer>> level : hands(records, column).entrySet()) {
          if (!enough(level.getValue())) {
            withheld++;
            for (String text : everyForm(summary)) {
              assertThat(text)
                  .as("circle %d: %s %s", seed, level.getKey(), level.getValue())
                  .doesNotContainPattern("\\b" + level.getKey() + "\\b");
            }
          }
        }
      }
    }
    assertThat(withheld).isGreaterThan(50);
  }

  private static Map<String, Map<String, Integer>> hands(GraftRecords records, String column) {
    Map<String, Map<String, Integer>> hands = new HashMap<>();
    for (Row row : records.frame()) {
      hands
          .computeIfAbsent(row.getString(column), key -> new HashMap<>())
          .merge(row.getString("grafter"), row.getInt("grafts"), Integer::sum);
    }
    return hands;
  }

  private static boolean enough(Map<String, Integer> grafts) {
    int all = grafts.values().stream().mapToInt(g -> g).sum();
    int largest = grafts.values().stream().mapToInt(g -> g).max().orElse(0);
    return all >= 10 && grafts.size() >= 3 && largest <= 0.8 * all;
  }

  @Test
  void published_counts_add_up_to_the_records() {
    for (int seed = 0; seed < CIRCLES; seed++) {
      GraftRecords records = Sheets.read(folder, Sheets.circle(seed));
      SeasonSummary summary =
          SeasonSummary.of(records, CountedAnswers.of(records), SummaryOptions.defaults());
      Map<String, long[]> sums = new HashMap<>();
      for (String line : summary.csv().lines().skip(1).toList()) {
        String[] cells = line.split(",", -1);
        long[] sum = sums.computeIfAbsent(cells[0] + cells[2], key -> new long[2]);
        sum[0] += Long.parseLong(cells[3]);
        sum[1] += Long.parseLong(cells[4]);
      }
      assertThat(sums).isNotEmpty();
      for (String table : List.of("season", "cultivar", "rootstock")) {
        if (sums.containsKey(table)) {
          assertThat(sums.get(table)).containsExactly(records.grafts(), records.takes());
        }
      }
    }
  }

  @Test
  void page_is_well_formed_and_needs_nothing_from_elsewhere() {
    String html = summary(Sheets.circle(1)).html();

    SvgReader.parse(html.replace("<!DOCTYPE html>", ""));
    assertThat(html.replace("http://www.w3.org/2000/svg", ""))
        .contains("<html lang=\"en\">", "href=\"#content\"", "<svg")
        .doesNotContain("<script", "src=", "http", "@import", "url(", "<link");
  }

  @Test
  void headings_run_in_order_and_every_link_of_the_page_leads_somewhere() {
    String html = summary(Sheets.circle(1)).html();
    List<String> links = new ArrayList<>();
    java.util.regex.Pattern.compile("href=\"#([^\"]+)\"")
        .matcher(html)
        .results()
        .forEach(m -> links.add(m.group(1)));

    assertThat(links).hasSizeGreaterThan(8);
    assertThat(links).allSatisfy(link -> assertThat(html).containsOnlyOnce("id=\"" + link + "\""));
    assertThat(html).containsOnlyOnce("<h1>");
  }

  @Test
  void no_id_is_used_twice() {
    String html = summary(Sheets.circle(1)).html();
    List<String> ids = new ArrayList<>();
    java.util.regex.Pattern.compile(" id=\"([^\"]+)\"")
        .matcher(html)
        .results()
        .forEach(m -> ids.add(m.group(1)));

    assertThat(ids).doesNotHaveDuplicates().hasSizeGreaterThan(20);
  }

  @Test
  void names_as_typed_stay_text() {
    String sheet = Sheets.circle(1).replace("Cv0", "<script>alert('&')</script>");
    SeasonSummary summary = summary(sheet);

    SvgReader.parse(summary.html().replace("<!DOCTYPE html>", ""));
    assertThat(summary.html()).contains("&lt;script&gt;").doesNotContain("<script");
    assertThat(summary.markdown()).contains("\\<script\\>").doesNotContain("<script>");
  }

  @Test
  void a_name_that_a_spreadsheet_would_run_is_kept_as_text() {
    SeasonSummary summary = summary(Sheets.circle(1).replace("Cv0", "=1+1"));

    assertThat(summary.csv()).contains("cultivar,'=1+1,").doesNotContain(",=1+1");
  }

  @Test
  void a_name_that_turns_the_direction_of_writing_turns_nothing() {
    SeasonSummary summary = summary(Sheets.circle(4).replace("Cv0", "Cv\u202E0"));
    List<String> written = new ArrayList<>(List.of(summary.html(), summary.handout()));
    written.addAll(List.of(summary.markdown(), summary.csv(), summary.published().csv()));
    assertThat(written)
        .noneMatch(text -> text.contains("\u202E"))
        .anyMatch(text -> text.contains("Cv\uFFFD0"));
    assertThat(summary.csv()).contains("cultivar,Cv\\u202E0,");
    assertThat(PublishedBefore.read(summary.published().csv())).isEqualTo(summary.published());
  }

  @Test
  void two_members_get_their_joint_result_and_are_told_what_is_held_back() {
    String sheet = Sheets.circle(1).replaceAll("Qmember[2-5]", "Qmember1");
    SeasonSummary summary = summary(sheet);

    assertThat(summary.markdown())
        .containsPattern("Of [\\d,]+ grafts, about \\d in 10 took\\.")
        .contains("Only their joint result is given, in round figures")
        .doesNotContain("Cv0", "St0", " % (");
    assertThat(summary.csv().lines()).hasSize(1);
    assertThat(summary.published().pages()).isEmpty();
  }

  @Test
  void one_member_gets_no_page_but_a_reason() {
    String sheet = Sheets.circle(1).replaceAll("Qmember\\d", "Qmember1");

    assertThatThrownBy(() -> summary(sheet))
        .isInstanceOf(NothingToPublish.class)
        .hasMessageMatching(
            "a page would tell on its members: these records hold \\d+ assessed grafts by 1 member,"
                + " and a page needs at least 10 grafts by 3 members, none with more than 80 % of"
                + " them; add more records, or show the analysis page only to those who made the"
                + " grafts");
  }

  /** Leaving a column out must never show more than filling it in would. */
  @Test
  void without_names_of_grafters_no_line_is_shown_at_all() {
    assertThatThrownBy(() -> summary(Sheets.nameless(1)))
        .isInstanceOf(NothingToPublish.class)
        .hasMessageContaining("the records don't say who grafted")
        .hasMessageContaining("fill in the grafter column, a letter for each person will do");
  }

  @Test
  void where_it_is_stated_how_many_grafted_their_joint_result_is_given() {
    GraftRecords records = Sheets.read(folder, Sheets.nameless(1));
    SummaryOptions six = SummaryOptions.defaults().members(6);
    SeasonSummary summary = SeasonSummary.of(records, CountedAnswers.of(records), six);

    assertThat(summary.markdown())
        .contains("the records don't say who grafted, so nobody can see how many people")
        .containsPattern("about \\d in 10 took")
        .doesNotContain("members took part", "Cv0", "St0");
    assertThat(summary.csv().lines()).hasSize(1);
    SummaryOptions one = SummaryOptions.defaults().members(1);
    assertThatThrownBy(() -> SeasonSummary.of(records, CountedAnswers.of(records), one))
        .isInstanceOf(NothingToPublish.class);
  }

  /** 400 grafts followed are the work of many, 20 that were alive at first could be one's. */
  @Test
  void late_loss_is_told_only_where_grafts_once_alive_are_the_work_of_enough() {
    GraftRecords records = Sheets.read(folder, Sheets.circle(1));
    for (int alive : new int[] {2, 36}) {
      List<Answer> answers = new ArrayList<>(CountedAnswers.of(records));
      answers.removeIf(LateLoss.class::isInstance);
      answers.add(lateLoss(alive));
      String html = SeasonSummary.of(records, answers, SummaryOptions.defaults()).html();

      assertThat(html.contains("late-loss")).as("%d of 40 alive", alive).isEqualTo(alive == 36);
    }
  }

  /** Ten rows of 40 grafts, of which so many were alive at first and half of them at last. */
  private static LateLoss lateLoss(int alive) {
    List<CountedRow.Count> counts =
        List.of(new CountedRow.Count(30, alive), new CountedRow.Count(90, alive / 2));
    List<CountedRow> rows =
        IntStream.range(0, 10)
            .mapToObj(i -> new CountedRow("row " + i, Map.of("rootstock", "St0"), 40, counts))
            .toList();
    return LateLossCalculator.of(rows, List.of(), AnswerOptions.defaults()).orElseThrow();
  }

  @Test
  void the_same_page_again_publishes_nothing_new() {
    GraftRecords records = Sheets.read(folder, Sheets.circle(1));
    SummaryOptions options = SummaryOptions.defaults();
    SeasonSummary first = SeasonSummary.of(records, CountedAnswers.of(records), options);
    SeasonSummary again =
        SeasonSummary.of(records, CountedAnswers.of(records), options.before(first.published()));

    assertThat(first.published().csv()).doesNotContain("Qmember", "Qsite", "Qnote");
    assertThat(again.csv()).isEqualTo(first.csv());
    assertThat(again.published()).isEqualTo(first.published());
  }

  /** One member's sheet that comes late may not be read off the difference of two pages. */
  @Test
  void a_late_sheet_of_one_member_waits() {
    String all = Sheets.circle(1);
    StringBuilder early = new StringBuilder();
    all.lines()
        .filter(line -> !line.matches("r\\d+,2024,Qsite3,Qmember3,.*"))
        .forEach(line -> early.append(line).append('\n'));
    GraftRecords before = Sheets.read(folder, early.toString());
    SeasonSummary first =
        SeasonSummary.of(before, CountedAnswers.of(before), SummaryOptions.defaults());
    GraftRecords records = Sheets.read(folder, all);
    SummaryOptions options = SummaryOptions.defaults().before(first.published());
    SeasonSummary second = SeasonSummary.of(records, CountedAnswers.of(records), options);

    assertThat(second.csv().lines().map(line -> line.split(",", -1)[4]))
        .containsExactlyElementsOf(
            first.csv().lines().map(line -> line.split(",", -1)[4]).toList());
    assertThat(second.markdown())
        .containsPattern(
            "\\d+ grafts? came in after an earlier page and can't be counted here yet");
    assertThat(first.markdown()).contains("don't publish this one");
    assertThat(second.markdown()).doesNotContain("don't publish this one");
  }

  /** How far apart sites are is one member's result if a site is one member's. */
  @Test
  void a_site_of_one_member_is_not_spoken_of() {
    assertThat(summary(Sheets.circle(1)).markdown()).doesNotContain("| Site |");
    String shared =
        Sheets.circle(1).replaceAll("Qsite[0-2]", "QsiteA").replaceAll("Qsite[3-5]", "QsiteB");
    assertThat(summary(shared).markdown()).contains("| Site |").doesNotContain("Qsite");
  }

  @Test
  void a_season_that_is_not_there_is_refused_with_those_that_are() {
    GraftRecords records = Sheets.read(folder, Sheets.circle(1));
    List<Answer> analysis = CountedAnswers.of(records);

    assertThatThrownBy(
            () -> SeasonSummary.of(records, analysis, SummaryOptions.defaults().season("1999")))
        .hasMessage("no season \"1999\" in these records; there are [2022, 2023, 2024]");
  }

  @Test
  void an_earlier_season_can_be_asked_for() {
    GraftRecords records = Sheets.read(folder, Sheets.circle(1));
    SummaryOptions options = SummaryOptions.defaults().season("2023").circle("Halden Bay");
    String markdown = SeasonSummary.of(records, CountedAnswers.of(records), options).markdown();

    assertThat(markdown)
        .startsWith("# Halden Bay: grafting season 2023\n")
        .contains("## What changed since 2022")
        .contains("took part in 2023");
  }

  @Test
  void take_is_defined_with_its_day() {
    assertThat(summary(Sheets.circle(1)).markdown())
        .contains("A graft has taken when it was alive when counted, 97 days after grafting.");
  }

  @Test
  void a_sentence_that_names_a_withheld_stock_is_left_out_and_others_stay() {
    String sheet =
        Sheets.circle(1).replace("St0", "Solo").replaceAll("(Qmember[^0],Cv\\d,)Solo", "$1St1");
    String markdown = summary(sheet).markdown();

    assertThat(markdown).contains("records like these would have shown it in 8 of 10 cases.");
    assertThat(markdown).doesNotContain("Solo");
  }

  @Test
  void strict_shows_less() {
    long usual = 0;
    long strict = 0;
    for (int seed : IntStream.range(0, CIRCLES).toArray()) {
      GraftRecords records = Sheets.read(folder, Sheets.circle(seed));
      List<Answer> analysis = CountedAnswers.of(records);
      SummaryOptions options = SummaryOptions.defaults();
      usual += SeasonSummary.of(records, analysis, options).csv().lines().count();
      SummaryOptions careful = options.rule(PrivacyRule.strict());
      strict += SeasonSummary.of(records, analysis, careful).csv().lines().count();
    }
    assertThat(strict).isLessThan(usual);
  }

  @Test
  void the_same_records_give_the_same_bytes() {
    assertThat(everyForm(summary(Sheets.circle(3))))
        .isEqualTo(everyForm(summary(Sheets.circle(3))));
  }

  @Test
  void cautions_defer_and_nothing_is_called_compatible_or_legal() {
    String markdown = summary(Sheets.circle(1)).markdown();

    assertThat(markdown)
        .contains(
            "ask your plant-health authority", "the label comes first", "the owner's permission")
        .doesNotContainIgnoringCase("compatible")
        .doesNotContainIgnoringCase("significant");
  }
}
