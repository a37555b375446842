package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.analysis.Analysis;
import org.taketally.answers.AnswerOptions;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.SeasonWords;
import org.taketally.wording.season.SureWords;

/**
 * One quantity has one estimate and one range, wherever it is said: on the season page, its
 * handout, the demo's first screen and the page of all answers, figures read aloud included.
 */
class OneNumberTest {

  private static final Path DATASETS =
      Path.of(System.getProperty("taketally.root", "..")).resolve("datasets");

  private static final String POINTS = "(?:under )?(?<value>\\d+) points?";
  private static final String POINT_RANGE = "(?<low>[+-]?\\d+) to (?<high>[+-]?\\d+) points";
  private static final String SHARES = "(?<low>\\d+) to (?<high>\\d+)";
  private static final String NAME = "(?<who>[A-Z][\\w' -]*?)";
  private static final String TWO = "(?<who>[A-Z]\\w+(?: \\w+)*?)";
  private static final String OTHER = "(?<other>[A-Z]\\w+(?: \\w+)*?)";

  /** How each kind of quantity is said, in any of the texts. */
  private static final Map<String, List<String>> KINDS =
      new TreeMap<>(
          Map.of(
              "gap between two rootstocks",
              List.of(
                  "widest gap, between "
                      + TWO
                      + " and "
                      + OTHER
                      + ", is about "
                      + POINTS
                      + " \\(likely under (?<high>\\d+) points?\\)",
                  "widest gap is between "
                      + TWO
                      + " and "
                      + OTHER
                      + "(?:, |: )"
                      + POINTS
                      + " \\(likely "
                      + POINT_RANGE
                      + "\\)",
                  OTHER
                      + " takes "
                      + POINTS
                      + " less than "
                      + TWO
                      + " \\(likely "
                      + POINT_RANGE
                      + "\\)",
                  "Largest: "
                      + TWO
                      + " over "
                      + OTHER
                      + ", "
                      + POINTS
                      + " \\(likely "
                      + POINT_RANGE
                      + "\\)",
                  "Rootstock: typically .{5,60}; from "
                      + OTHER
                      + " to "
                      + TWO
                      + ", "
                      + POINTS
                      + " \\(likely "
                      + POINT_RANGE
                      + "\\)"),
              "take of a cultivar or rootstock",
              List.of(
                  "\\| " + NAME + " \\| (?<value>\\d+) % \\(" + SHARES + " %\\) \\|",
                  "(?m)^ *" + NAME + " (?<value>\\d+) \\(" + SHARES + "\\) *$",
                  NAME + " takes about (?<value>\\d+) % \\(likely " + SHARES + " %\\)",
                  "(?:Hardest|Easiest): "
                      + NAME
                      + ", about (?<value>\\d+) % \\(likely "
                      + SHARES
                      + " %\\)"),
              "grafts for 10 trees",
              List.of(
                  "for 10 trees of " + NAME + " make (?<value>\\d+) grafts",
                  "(?m)^\\| " + NAME + " \\|(?:[^|\\n]+\\|){5} (?<value>\\d+) \\|$"),
              "typical difference of a factor",
              List.of(
                  "(?<who>[Ss]tock condition|[Cc]ultivar|[Bb]ud stage|[Rr]ootstock|[Ss]torage days)"
                      + "(?: \\|| \\(typically|:|: typically)? "
                      + POINTS
                      + "(?: \\((?:likely )?|, likely )"
                      + POINT_RANGE,
                  "\\| (?<who>Stock condition): where[^|]*\\| "
                      + POINTS
                      + " \\(likely "
                      + POINT_RANGE),
              "take after some days of storage",
              List.of(
                  "\\| (?<who>\\d+) days \\| (?<value>\\d+) % \\(" + SHARES + " %\\) \\|",
                  "At (?<who>\\d+): about (?<value>\\d+) % \\(likely " + SHARES + " %\\)",
                  "bout \\d in 10 \\(likely " + SHARES + " %\\) at (?<who>\\d+) days"),
              "late loss",
              List.of(
                  "about (?<value>\\d+) % \\(likely " + SHARES + " %\\) were lost",
                  "bout \\d in 10 \\(likely " + SHARES + " %\\) of the grafts that were once"),
              "takes of a season",
              List.of(
                  "In (?<who>\\d+), (?<value>[\\d,]+) of (?<high>[\\d,]+) grafts took",
                  "(?m)^\\| (?<who>20\\d\\d) \\| (?<high>[\\d,]+) \\| (?<value>[\\d,]+) \\|")));

  private static final Pattern HEADLINE =
      Pattern.compile(
          "moves take by (?:at most )?about "
              + POINTS
              + " \\(likely under (?<high>\\d+) points?\\), (?:within|where) your margin");

  @TempDir private Path folder;

  /** Everything one set of records makes, as people read or hear it. */
  private record Said(String season, String handout, String screen, String answers) {

    static Said of(GraftRecords records, Analysis analysis) {
      SeasonSummary summary = SeasonSummary.of(records, analysis, SummaryOptions.defaults());
      SureWords sure = SeasonWords.in(Language.ENGLISH).sure();
      return new Said(
          summary.markdown(),
          plain(summary.handout()),
          String.join("\n", summary.inShort()) + "\n" + String.join(" ", sure.limits()),
          plain(AnalysisPage.of(records, analysis).html()));
    }

    Map<String, String> all() {
      return new TreeMap<>(
          Map.of(
              "season page", season, "handout", handout, "demo", screen, "answers page", answers));
    }
  }

  /** Text without marks; figures count by their descriptions. */
  private static String plain(String html) {
    return html.replaceAll("(?s)<style>.*?</style>", "")
        .replaceAll("(?s)<table.*?</table>", "")
        .replaceAll("(?s)<(title|text|tspan)\\b[^>]*>.*?</\\1>", "")
        .replaceAll("<[^>]*>", " ")
        .replace("&#39;", "'")
        .replace("&quot;", "\"")
        .replace("&amp;", "&")
        .replace('\u00a0', ' ');
  }

  /** Values, lower and upper ends found of each quantity. */
  private static Map<String, List<Set<String>>> quantities(Said said) {
    Map<String, List<Set<String>>> found = new TreeMap<>();
    KINDS.forEach(
        (kind, ways) ->
            ways.forEach(
                way ->
                    said.all()
                        .forEach(
                            (where, text) -> {
                              Matcher at = Pattern.compile(way).matcher(text);
                              while (at.find()) {
                                note(found, kind, way, at);
                              }
                            })));
    return found;
  }

  private static void note(
      Map<String, List<Set<String>>> found, String kind, String way, Matcher at) {
    String who =
        Stream.of("who", "other")
            .filter(group -> way.contains("<" + group + ">"))
            .map(group -> at.group(group).toLowerCase(Locale.ROOT))
            .collect(Collectors.joining(" over "));
    List<Set<String>> sets =
        found.computeIfAbsent(
            kind + ": " + who,
            key -> new ArrayList<>(List.of(new TreeSet<>(), new TreeSet<>(), new TreeSet<>())));
    List<String> groups = List.of("value", "low", "high");
    for (int i = 0; i < groups.size(); i++) {
      if (way.contains("<" + groups.get(i) + ">")) {
        sets.get(i).add(at.group(groups.get(i)).replace("+", ""));
      }
    }
  }

  private static Set<String> kinds(Map<String, List<Set<String>>> found) {
    return found.keySet().stream().map(key -> key.split(": ")[0]).collect(Collectors.toSet());
  }

  /** How many of the ways to say a kind of quantity are found. */
  private static long ways(Said said, String kind) {
    String all = String.join("\n", said.all().values());
    return KINDS.get(kind).stream().filter(way -> Pattern.compile(way).matcher(all).find()).count();
  }

  /** The headline of the answers gives the widest gap without its names. */
  private static void assertHeadlineIsTheWidestGap(Said said) {
    Matcher headline = HEADLINE.matcher(said.answers());
    Matcher gap =
        Pattern.compile(KINDS.get("gap between two rootstocks").get(0)).matcher(said.season());
    if (headline.find() && gap.find()) {
      assertThat(headline.group("value") + " under " + headline.group("high"))
          .isEqualTo(gap.group("value") + " under " + gap.group("high"));
    }
  }

  private static void assertSaidOnce(Said said) {
    quantities(said)
        .forEach(
            (what, sets) ->
                assertThat(sets)
                    .as("%s: values, lower and upper ends", what)
                    .allSatisfy(values -> assertThat(values).hasSizeLessThanOrEqualTo(1)));
    assertHeadlineIsTheWidestGap(said);
    SureWords sure = SeasonWords.in(Language.ENGLISH).sure();
    said.all()
        .forEach(
            (where, text) -> {
              if (text.replace(sure.likely(), "").contains("likely")) {
                assertThat(text.split(Pattern.quote(sure.likely()), -1))
                    .as("what likely means on the " + where)
                    .hasSize(2);
              }
              if (text.replace(sure.probably(), "").toLowerCase(Locale.ROOT).contains("probably")) {
                assertThat(text.split(Pattern.quote(sure.probably()), -1))
                    .as("what probably means on the " + where)
                    .hasSize(2);
              }
            });
  }

  /** Members read one explanation of "likely"; ranges of another kind would be misread. */
  @Test
  void ranges_that_the_page_would_explain_wrongly_give_no_page() {
    GraftRecords records =
        RecordsReader.defaults()
            .readFolder(DATASETS.resolve("halden-bay-walnut"), "grafts-2023.csv");
    Analysis narrower =
        Analysis.of(records, AnswerOptions.defaults().withDraws(100).withCoverage(0.8));
    assertThatThrownBy(() -> SeasonSummary.of(records, narrower, SummaryOptions.defaults()))
        .hasMessage(
            "the season page explains ranges that hold 0.95 of the time, this analysis was asked"
                + " for 0.8; analyse without withCoverage");
  }

  private static Said of(String dataset, boolean counted) {
    Path from = DATASETS.resolve(dataset);
    RecordsReader reader = RecordsReader.defaults();
    GraftRecords records = reader.readFolder(from, "grafts-*.csv");
    Analysis analysis = Analysis.of(records, AnswerOptions.defaults().withDraws(300));
    if (counted) {
      analysis =
          analysis.withLateLoss(
              records, reader.assessments(List.of(from.resolve("assessments.csv")), records));
    }
    return Said.of(records, analysis);
  }

  @Test
  void of_the_demo() {
    Said said = of("halden-bay-avocado", true);
    KINDS.keySet().forEach(k -> assertThat(ways(said, k)).as(k).isGreaterThanOrEqualTo(2));
    assertSaidOnce(said);
  }

  @Test
  void where_a_rootstock_matters() {
    Said said = of("halden-bay-walnut", false);
    assertThat(kinds(quantities(said)))
        .contains("gap between two rootstocks", "take of a cultivar or rootstock");
    assertSaidOnce(said);
  }

  @Test
  void where_nobody_can_tell_yet() {
    GraftRecords records = Sheets.read(folder, Sheets.circle(1));
    Said said = Said.of(records, Analysis.of(records, AnswerOptions.defaults().withDraws(300)));
    assertThat(said.answers()).contains("Can't tell yet");
    assertThat(kinds(quantities(said))).contains("gap between two rootstocks");
    assertSaidOnce(said);
  }

  @Test
  void the_test_sees_two_ranges() {
    Said said =
        new Said(
            "widest gap is between Ostrey and Pellin, 4 points (likely -1 to +9 points)",
            "",
            "",
            "Pellin takes 4 points less than Ostrey (likely -1 to +7 points)");
    assertThat(quantities(said).get("gap between two rootstocks: ostrey over pellin").get(2))
        .containsExactly("7", "9");
  }
}
