package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
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
import org.taketally.answers.Estimate;
import org.taketally.answers.advice.Advice.CompareHands;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.NoAdvice;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.records.GraftRecords;
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

  @Test
  void the_test_sees_english() throws IOException {
    Set<String> english = wordsOf(Language.ENGLISH);
    english.removeAll(wordsOf(Language.SPANISH));

    assertThat(english).contains("the", "grafts", "likely", "rootstock").hasSizeGreaterThan(300);
    assertThat(words(spoken("<p aria-label=\"Grafts\">x</p>"))).contains("grafts");
  }
}
