package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.taketally.analysis.Analysis;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.advice.Advice.CompareHands;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.NoAdvice;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.terms.Interval;
import org.taketally.wording.language.Language;

/** The whole page and its handout in Spanish: no word of English is left on them. */
class SpanishPageTest {

  private static final int CIRCLES = 12;
  private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");

  @TempDir private Path folder;

  private static Set<String> words(String text) {
    return WORD.matcher(text.toLowerCase(Locale.ROOT))
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> wordsOf(Language language) throws IOException {
    Properties texts = new Properties();
    String name = language.code() + ".properties";
    try (Reader in =
        new InputStreamReader(Language.class.getResourceAsStream(name), StandardCharsets.UTF_8)) {
      texts.load(in);
    }
    return words(String.join(" ", texts.values().stream().map(String::valueOf).toList()));
  }

  /** What people read or hear: texts, and the labels and descriptions of what they can't see. */
  private static String spoken(String html) {
    String labels =
        Pattern.compile("(?:aria-label|alt|data-label)=\"([^\"]*)\"")
            .matcher(html)
            .results()
            .map(m -> m.group(1))
            .collect(Collectors.joining(" "));
    return html.replaceAll("(?s)<style>.*?</style>", " ").replaceAll("<[^>]*>", " ") + " " + labels;
  }

  private static SeasonAdvice advice() {
    Estimate gain = new Estimate(0.12, new Interval(0.05, 0.19, 0.95));
    List<NoAdvice> none =
        Stream.of(NoAdvice.Reason.values())
            .map(reason -> new NoAdvice("bud_stage", reason))
            .toList();
    return new SeasonAdvice(
        List.of(
            new PreferLevels("rootstock", List.of("St0"), List.of("St1", "St2"), gain, 0.97, 480),
            new CompareHands("grafter", 6, gain, 0.9, 480)),
        none);
  }

  @Test
  void no_english_is_left_on_the_page_or_its_handout() throws IOException {
    Set<String> english = wordsOf(Language.ENGLISH);
    english.removeAll(wordsOf(Language.SPANISH));
    SummaryOptions options = SummaryOptions.defaults().language(Language.SPANISH).circle("Club");
    for (int seed = 0; seed < CIRCLES; seed++) {
      GraftRecords records = Sheets.read(folder, Sheets.circle(seed));
      SeasonSummary summary =
          SeasonSummary.of(records, CountedAnswers.of(records), advice(), options);
      for (String form : List.of(summary.html(), summary.handout(), summary.markdown())) {
        Set<String> left = words(spoken(form));
        left.retainAll(english);
        assertThat(left).as("English left in circle " + seed).isEmpty();
      }
      assertThat(summary.html()).contains("<html lang=\"es\">", "Portainjerto");
    }
  }

  /** Ten thousand grafts and more, so that a page has thousands to write. */
  private static String many(String sheet) {
    return Pattern.compile("(?m)^(r\\d+,.*,)(\\d+),(\\d+),(Qnote\\d+)$")
        .matcher(sheet)
        .replaceAll("$1$200,$300,$4")
        .replaceAll("(?m),000,(Qnote\\d+)$", ",0,$1");
  }

  private static String without(String text, String column) {
    List<String> header = List.of(text.lines().findFirst().orElseThrow().split(",", -1));
    int left = header.indexOf(column);
    return text.lines()
        .map(
            line -> {
              List<String> cells = new ArrayList<>(List.of(line.split(",", -1)));
              cells.remove(left);
              return String.join(",", cells);
            })
        .collect(Collectors.joining("\n", "", "\n"));
  }

  private static String twelveGrafts() {
    StringBuilder text = new StringBuilder("grafter,cultivar,rootstock,graft_date,outcome\n");
    for (int i = 0; i < 12; i++) {
      text.append(
          "Q%d,Orrin,Pellin,2024-03-1%d,%s\n"
              .formatted(i % 4, i % 3, i % 5 == 0 ? "failed" : "taken"));
    }
    return text.toString();
  }

  static Stream<Arguments> smallSheets() {
    String two = Sheets.circle(3).replaceAll("Qmember[02-5]", "Qmember0");
    return Stream.of(
        Arguments.of("two members", two),
        Arguments.of("no rootstock column", without(Sheets.circle(2), "rootstock")),
        Arguments.of("twelve grafts of one cultivar", twelveGrafts()),
        Arguments.of("thousands", many(Sheets.circle(1))));
  }

  /** With a fit, as from the command line: in whatever state the answers are. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("smallSheets")
  void small_and_odd_records_give_a_page_without_english(String what, String sheet)
      throws IOException {
    Set<String> english = wordsOf(Language.ENGLISH);
    english.removeAll(wordsOf(Language.SPANISH));
    SummaryOptions options = SummaryOptions.defaults().language(Language.SPANISH).circle("Club");
    Path file = Files.writeString(folder.resolve("sheet.csv"), sheet);
    RecordsReader reader = RecordsReader.defaults();
    boolean stocks = sheet.lines().findFirst().orElseThrow().contains("rootstock");
    GraftRecords records = (stocks ? reader : reader.withRootstock("unknown")).read(List.of(file));
    Analysis analysis = Analysis.of(records, AnswerOptions.defaults().withDraws(200));
    SeasonSummary summary = SeasonSummary.of(records, analysis, options);
    for (String form : List.of(summary.html(), summary.handout(), summary.markdown())) {
      String said = spoken(form);
      Set<String> left = words(said);
      left.retainAll(english);
      assertThat(left).as("English left: " + what).isEmpty();
      assertThat(said)
          .as(what)
          .doesNotContainPattern("\\d,\\d{3}(?!\\d)")
          .doesNotContainPattern("\\d\\.\\d(?!\\d{2})")
          .doesNotContainPattern("\\d(?: |)%")
          .doesNotContainPattern("20\\d\\d-\\d\\d");
    }
    if (what.equals("thousands")) {
      assertThat(spoken(summary.html())).containsPattern("\\d{2}\\p{Z}\\d{3} injertos");
    }
  }

  @Test
  void the_test_sees_english() throws IOException {
    Set<String> english = wordsOf(Language.ENGLISH);
    english.removeAll(wordsOf(Language.SPANISH));

    assertThat(english).contains("the", "grafts", "likely", "rootstock").hasSizeGreaterThan(300);
    assertThat(words(spoken("<p aria-label=\"Grafts\">x</p>"))).contains("grafts");
  }
}
