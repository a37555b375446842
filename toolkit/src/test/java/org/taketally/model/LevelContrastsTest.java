package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;

/** Levels measured alike: their likelihood has a closed form, worked out by hand. */
class LevelContrastsTest {

  private static final int COUNT = 4_000;

  /** Three levels, each with variance v, as differences from the last. */
  private static LevelContrasts three(double first, double second, double last, double v) {
    return new LevelContrasts(
        new double[] {first - last, second - last}, new double[][] {{2 * v, v}, {v, 2 * v}});
  }

  /** Levels 3, 0, 0 with variance v: squares from their mean add up to 6, on two degrees. */
  @Test
  void any_difference_is_the_sum_of_squares_from_the_mean() {
    for (double v : new double[] {1, 4, 0.25}) {
      LevelTest test = three(3, 0, 0, v).anyDifference();
      assertThat(test.chiSquare()).isCloseTo(6 / v, within(1e-11));
      assertThat(test.degrees()).isEqualTo(2);
      assertThat(test.pValue()).isCloseTo(Math.exp(-3 / v), within(1e-12));
    }
  }

  /**
   * With Q the squares over v on k degrees, log p = -(k log c + Q / c) / 2 with c = 1 + tau / v is
   * highest at c = Q / k: chi-square Q - k - k log(Q / k), half the time 0.
   */
  @Test
  void any_spread_is_the_likelihood_ratio_in_closed_form() {
    for (double v : new double[] {1, 2, 0.25}) {
      double q = 6 / v;
      double expected = q - 2 - 2 * Math.log(q / 2);
      LevelTest test = three(3, 0, 0, v).anySpread();
      assertThat(test.chiSquare()).isCloseTo(expected, within(1e-8));
      assertThat(test.degrees()).isEqualTo(1);
      assertThat(test.pValue())
          .isCloseTo(ChiSquaredDistribution.of(1).survivalProbability(expected) / 2, within(1e-9));
    }
  }

  /** Q = 6 / 4 is below its two degrees of freedom: chance alone gives as much. */
  @Test
  void levels_no_further_apart_than_chance_have_no_spread() {
    assertThat(three(3, 0, 0, 4).anySpread().chiSquare()).isCloseTo(0, within(1e-9));
    assertThat(three(3, 0, 0, 4).anySpread().pValue()).isGreaterThan(0.49);
    assertThat(three(2, 2, 2, 1).anySpread()).isEqualTo(new LevelTest(0, 1, 1));
  }

  @Test
  void levels_known_exactly_are_not_drawn_together() {
    LevelContrasts contrasts = three(1.5, -0.7, 0.2, 1e-12);
    for (int seed = 0; seed < 20; seed++) {
      assertThat(contrasts.drawnTogether(new double[] {1.3, -0.9}, new SplittableRandom(seed)))
          .containsExactly(new double[] {1.3, -0.9}, within(1e-3));
    }
  }

  /**
   * Records that say nothing leave the prior: differences of N(0, s^2) levels, s half-normal, so
   * variances are 2 E(s^2) = 2 and the covariance 1; of 4,000 draws their error is about 0.08.
   */
  @Test
  void levels_hardly_known_are_drawn_from_the_prior() {
    LevelContrasts contrasts = three(0, 0, 0, 1e6);
    double[] sums = new double[3];
    SplittableRandom random = new SplittableRandom(5);
    for (int d = 0; d < COUNT; d++) {
      double[] free = {1_000 * random.nextGaussian(), 1_000 * random.nextGaussian()};
      double[] drawn = contrasts.drawnTogether(free, random);
      sums[0] += drawn[0] * drawn[0] / COUNT;
      sums[1] += drawn[1] * drawn[1] / COUNT;
      sums[2] += drawn[0] * drawn[1] / COUNT;
    }
    assertThat(sums[0]).isCloseTo(2, within(0.3));
    assertThat(sums[1]).isCloseTo(2, within(0.3));
    assertThat(sums[2]).isCloseTo(1, within(0.25));
  }
}
