package org.taketally.answers.effects;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.taketally.answers.Estimate;
import org.taketally.terms.Interval;

class FactorImportanceTest {

  private static Estimate estimate(double low, double value, double high) {
    return new Estimate(value, new Interval(low, high, 0.95));
  }

  @Test
  void a_thing_that_moves_take_is_given_with_its_worst_and_best() {
    String sentence =
        FactorImportanceCalculator.sentence(
            "bud_stage",
            estimate(0.15, 0.18, 0.22),
            estimate(0.16, 0.2, 0.25),
            "swelling",
            "dormant");
    assertThat(sentence)
        .isEqualTo(
            "Bud stage: typically 18 points (likely 15 to 22 points); from swelling to dormant, 20"
                + " points (likely 16 to 25 points).");
  }

  @Test
  void a_spread_estimated_as_zero_has_no_worst_and_best() {
    Estimate zero = estimate(0, 0, 0);
    assertThat(
            FactorImportanceCalculator.sentence(
                "grafting_day", zero, zero, "2022-08-26", "2022-08-26"))
        .isEqualTo("Grafting day: nothing seen of it; its spread is estimated as zero.");
  }
}
