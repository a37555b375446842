package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.terms.Logit;

class NormalAverageTest {

  /** Moments of the normal: of N(1, 4), 13 and 73; the eighth of N(0, 1), 7 * 5 * 3 = 105. */
  @Test
  void powers_have_the_moments_of_the_normal() {
    assertThat(NormalAverage.of(1, 4, x -> x * x * x)).isCloseTo(13, within(1e-12));
    assertThat(NormalAverage.of(1, 4, x -> x * x * x * x)).isCloseTo(73, within(1e-11));
    assertThat(NormalAverage.of(0, 1, x -> Math.pow(x, 8))).isCloseTo(105, within(1e-10));
    assertThat(NormalAverage.of(3, 0, x -> x)).isCloseTo(3, within(1e-14));
  }

  /** 3 in 4 for sure is log 3; takes and failures mirror each other. */
  @Test
  void take_without_spread_is_that_of_the_logit_and_mirrors_with_it() {
    assertThat(NormalAverage.take(Math.log(3), 0)).isCloseTo(0.75, within(1e-14));
    assertThat(NormalAverage.take(0, 1.7)).isCloseTo(0.5, within(1e-14));
    assertThat(NormalAverage.take(1, 2) + NormalAverage.take(-1, 2)).isCloseTo(1, within(1e-14));
  }

  /** By trapezoids of a hundredth of the standard deviation, ten to each side. */
  @Test
  void take_agrees_with_a_fine_sum() {
    for (double mean : new double[] {-1, 0.5, 2}) {
      double sum = 0;
      double sd = 0.8;
      for (int i = -1_000; i <= 1_000; i++) {
        double z = i / 100.0;
        sum += Math.exp(-z * z / 2) * Logit.take(mean + sd * z) / 100 / Math.sqrt(2 * Math.PI);
      }
      assertThat(NormalAverage.take(mean, sd * sd)).isCloseTo(sum, within(2e-5));
    }
  }
}
