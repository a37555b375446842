package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.figure.SampleAnswers;
import org.taketally.terms.Interval;
import org.taketally.wording.figures.ImportanceFigureWords;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.SeasonWords;

/** Sentences of the season page that once claimed more than the records hold. */
class PlainWordsTest {

  private static final SeasonWords WORDS = SeasonWords.in(Language.ENGLISH);

  @Test
  void only_a_cultivar_whose_whole_range_is_below_the_limit_is_clearly_hard() {
    Difficulty answer = SampleAnswers.difficulty(24);
    String[] said = WORDS.cultivars().hardOnes(answer).split("Probably hard: ");

    assertThat(said).hasSize(2);
    for (Difficulty.CultivarTake c : answer.cultivars()) {
      boolean hard = c.band() == Band.HARD;
      boolean clear = c.take().high() < answer.options().bands().hardBelow();
      assertThat(said[0].contains(c.cultivar() + " (")).as(c.cultivar()).isEqualTo(hard && clear);
      assertThat(said[1].contains(c.cultivar() + " (")).as(c.cultivar()).isEqualTo(hard && !clear);
    }
  }

  private static Importance factor(String name, double typical) {
    Estimate size = new Estimate(typical, new Interval(typical / 2, 2 * typical, 0.95));
    return new Importance(
        name, FactorImportance.Kind.LEVELS, 2, size, "best", "worst", size, false);
  }

  @Test
  void what_ties_is_said_to_tie_and_nothing_within_chance_is_named() {
    List<Importance> factors =
        List.of(factor("cultivar", 0.18), factor("stock_condition", 0.178), factor("method", 0));

    String said =
        WORDS
            .factors()
            .headline(
                new FactorImportance(factors, new TakeCount(300, 500), AnswerOptions.defaults()));

    assertThat(said)
        .isEqualTo("What goes with take most: cultivar and stock condition (18 points each).");
  }

  @Test
  void a_larger_difference_that_may_be_chance_is_not_passed_over() {
    List<Importance> factors =
        List.of(
            chance("grafter", 0.21),
            factor("cultivar", 0.18),
            chance("method", 0.178),
            chance("bud_stage", 0.02));

    assertThat(
            WORDS
                .factors()
                .headline(
                    new FactorImportance(
                        factors, new TakeCount(300, 500), AnswerOptions.defaults())))
        .isEqualTo(
            "What goes with take most: cultivar (18 points). As large or larger, but perhaps only"
                + " by chance: grafter (21) and method (18).");
  }

  @Test
  void a_figure_names_nothing_as_most_that_may_be_chance() {
    List<Importance> factors = List.of(chance("grafter", 0.3), factor("cultivar", 0.1));

    assertThat(title(factors)).isEqualTo("What goes with take: cultivar most");
    assertThat(title(factors.subList(0, 1))).isEqualTo("What goes with take");
  }

  private static String title(List<Importance> factors) {
    FactorImportance answer =
        new FactorImportance(factors, new TakeCount(9, 12), AnswerOptions.defaults());
    return new ImportanceFigureWords(answer, Language.ENGLISH).title(factors);
  }

  private static Importance chance(String name, double typical) {
    Estimate size = new Estimate(typical, new Interval(0, 2 * typical, 0.95));
    return new Importance(
        name, FactorImportance.Kind.LEVELS, 2, size, "best", "worst", size, false);
  }

  /** Neither causes, nor words that only a statistician reads, nor promises that aren't ours. */
  @Test
  void no_text_of_the_page_claims_a_cause_or_speaks_in_formulas() throws IOException {
    Properties texts = new Properties();
    try (Reader in =
        new InputStreamReader(
            Language.class.getResourceAsStream("en.properties"), StandardCharsets.UTF_8)) {
      texts.load(in);
    }
    texts.forEach(
        (key, text) -> {
          if (!String.valueOf(key).startsWith("about.")) {
            assertThat(
                    String.valueOf(text)
                        .toLowerCase(Locale.ROOT)
                        .replace("doesn't say what made the difference", ""))
                .as(String.valueOf(key))
                .doesNotContain(
                    "made the difference",
                    "think twice",
                    "compatible",
                    "mantel",
                    "significan",
                    "p-value",
                    "efficiency",
                    "posterior",
                    "because of",
                    "caused by");
          }
        });
  }
}
