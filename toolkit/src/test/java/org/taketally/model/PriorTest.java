package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Log densities up to a constant, worked out by hand. */
class PriorTest {

  private static double rise(Prior prior, double from, double to) {
    return prior.logDensity(to) - prior.logDensity(from);
  }

  @Test
  void half_normal_falls_with_the_square_in_units_of_its_scale() {
    assertThat(rise(Prior.halfNormal(1), 1, 3)).isCloseTo(-4, within(1e-14));
    assertThat(rise(Prior.halfNormal(2), 1, 3)).isCloseTo(-1, within(1e-14));
    assertThat(rise(Prior.halfNormal(0.5), 0, 1)).isCloseTo(-2, within(1e-14));
  }

  @Test
  void the_usual_prior_is_half_normal_of_scale_1_with_fixed_effects_by_jeffreys() {
    assertThat(rise(Prior.usual(), 1, 3)).isCloseTo(-4, within(1e-14));
    assertThat(Prior.usual().fixed()).isEqualTo(Prior.Fixed.JEFFREYS);
    assertThat(Prior.halfNormal(1).fixed()).isEqualTo(Prior.Fixed.FLAT);
    assertThat(Prior.usual()).isEqualTo(Prior.halfNormal(1).fixed(Prior.Fixed.JEFFREYS));
    assertThat(Prior.usual()).isNotEqualTo(Prior.halfNormal(2).fixed(Prior.Fixed.JEFFREYS));
  }

  @Test
  void flat_is_alike_everywhere() {
    assertThat(rise(Prior.flat(), 0.1, 7)).isZero();
  }

  /**
   * Precision p = 1/s^2 with density p^(a-1) exp(-b p) and dp/ds = -2/s^3: of s, s^-(2a+1)
   * exp(-b/s^2). From 1 to 2 with a = 1.5 and b = 2: -4 log 2 - 2/4 + 2.
   */
  @Test
  void gamma_on_the_precision_is_carried_over_to_the_standard_deviation() {
    assertThat(rise(Prior.gammaOnPrecision(1.5, 2), 1, 2))
        .isCloseTo(-4 * Math.log(2) + 1.5, within(1e-14));
  }

  @Test
  void refuses_scales_shapes_and_rates_that_are_not_above_0() {
    assertThatThrownBy(() -> Prior.halfNormal(0)).hasMessage("scale must be above 0, got 0.0");
    assertThatThrownBy(() -> Prior.gammaOnPrecision(0, 1))
        .hasMessage("shape and rate must be above 0, got 0.0 and 1.0");
    assertThatThrownBy(() -> Prior.gammaOnPrecision(1, 0))
        .hasMessage("shape and rate must be above 0, got 1.0 and 0.0");
  }
}
