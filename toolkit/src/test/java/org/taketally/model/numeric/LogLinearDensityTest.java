package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LogLinearDensityTest {

  /**
   * With a flat prior m s^2 / t^2 is chi-square on m - 1 degrees of freedom; its 5, 50 and 95 %
   * points on 10 degrees are 3.940, 9.342 and 18.307 (Abramowitz and Stegun 1972, table 26.8).
   */
  @Test
  void a_spread_known_from_levels_has_quantiles_of_chi_square() {
    LogLinearDensity density = LogLinearDensity.known(0.5, 11, t -> 0);
    assertThat(density.quantile(0.05)).isCloseTo(0.5 * Math.sqrt(11 / 18.307), within(5e-4));
    assertThat(density.quantile(0.5)).isCloseTo(0.5 * Math.sqrt(11 / 9.342), within(5e-4));
    assertThat(density.quantile(0.95)).isCloseTo(0.5 * Math.sqrt(11 / 3.940), within(2e-3));
  }

  /**
   * A variance of 1 with standard error 0.01: its root has 0.005 to first order; the prior exp(-20
   * t) moves the middle down by 20 * 0.005^2.
   */
  @Test
  void a_variance_measured_well_gives_a_normal_standard_deviation() {
    LogLinearDensity flat = LogLinearDensity.measured(1, 1e4, t -> 0);
    assertThat(flat.quantile(0.5)).isCloseTo(1, within(3e-5));
    assertThat(flat.quantile(0.841345)).isCloseTo(1.005, within(5e-5));
    assertThat(flat.quantile(0.158655)).isCloseTo(0.995, within(5e-5));
    LogLinearDensity prior = LogLinearDensity.measured(1, 1e4, t -> -20 * t);
    assertThat(prior.quantile(0.5)).isCloseTo(flat.quantile(0.5) - 0.0005, within(2e-5));
  }

  /** Half-normal: quartiles 0.31864, 0.67449 and 1.15035 (tables of the normal distribution). */
  @Test
  void a_tabulated_density_has_its_own_quantiles() {
    LogLinearDensity density = LogLinearDensity.of(0.5, 48, t -> -t * t / 2, new Parallel(1));
    assertThat(density.quantile(0.25)).isCloseTo(0.31864, within(3e-3));
    assertThat(density.quantile(0.5)).isCloseTo(0.67449, within(3e-3));
    assertThat(density.quantile(0.75)).isCloseTo(1.15035, within(3e-3));
  }

  /** Between fine points, too: d quantile / d share times the density is the same everywhere. */
  @Test
  void quantiles_rise_as_the_density_says_even_over_tiny_shares() {
    LogLinearDensity density = LogLinearDensity.known(0.5, 11, t -> 0);
    double tiny = 1e-7;
    double expected = Double.NaN;
    for (double share = 0.1037; share < 0.95; share += 0.1) {
      double here = density.quantile(share);
      double rise = density.quantile(share + tiny) - here;
      double product = rise * Math.exp(density.logDensity(here));
      expected = Double.isNaN(expected) ? product : expected;
      assertThat(product).isCloseTo(expected, within(1e-3 * expected));
    }
  }
}
