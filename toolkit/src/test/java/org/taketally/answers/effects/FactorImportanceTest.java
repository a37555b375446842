package org.taketally.answers.effects;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Simulated;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.effects.FactorImportance.Kind;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.terms.Interval;
import org.taketally.wording.Wording;

class FactorImportanceTest {

  private static Estimate estimate(double low, double value, double high) {
    return new Estimate(value, new Interval(low, high, 0.95));
  }

  private static List<String> said(Importance mover) {
    FactorImportance answer =
        new FactorImportance(List.of(mover), new TakeCount(70, 100), AnswerOptions.defaults());
    return Wording.of(answer).more();
  }

  @Test
  void a_thing_that_moves_take_is_given_with_its_worst_and_best() {
    Importance mover =
        new Importance(
            "bud_stage",
            Kind.LEVELS,
            3,
            estimate(0.15, 0.18, 0.22),
            "dormant",
            "swelling",
            estimate(0.16, 0.2, 0.25),
            false);
    assertThat(said(mover))
        .contains(
            "Bud stage: typically 18 points (likely 15 to 22 points); from swelling to dormant, 20"
                + " points (likely 16 to 25 points).");
  }

  /** No two grafts lie further apart than the best from the worst. */
  @Test
  void a_typical_difference_is_never_wider_than_the_widest() {
    for (int seed = 1; seed <= 20; seed++) {
      Cells cells =
          Simulated.grafts(160, 4, seed)
              .cultivars(0.1, 0, 0, 0, 0, 0, 0, -0.1)
              .grafters(0.1, 0, 0, 0)
              .cells();
      TakeFit fit = TakeModel.ofTakes().adjustFor("grafter").varyBy("cultivar").fit(cells);
      FactorImportance answer =
          FactorImportanceCalculator.of(fit, AnswerOptions.defaults().withDraws(400));
      for (Importance importance : answer.factors()) {
        assertThat(importance.typical().value())
            .as("seed %d, %s", seed, importance)
            .isLessThanOrEqualTo(importance.span().value());
        assertThat(importance.typical().interval().contains(importance.typical().value())).isTrue();
      }
    }
  }

  @Test
  void a_spread_estimated_as_zero_has_no_worst_and_best() {
    Estimate zero = estimate(0, 0, 0);
    Importance mover =
        new Importance(
            "grafting_day", Kind.VARYING, 9, zero, "2022-08-26", "2022-08-26", zero, false);
    assertThat(said(mover))
        .contains("Grafting day: nothing seen of it; its spread is estimated as zero.");
  }
}
