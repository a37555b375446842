package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Worked out by hand from Hastie, Tibshirani and Friedman (2009), eq. 5.4: knots 10, 12 and 14, so
 * t = (x - 10) / 4, first column t, second d0 - d1 with d0 = t^3 - (t - 1)^3 and d1 = 2 ((t -
 * 1/2)^3 - (t - 1)^3), each power 0 below 0.
 */
class SplineTest {

  private static final double[] VALUES = {14, 10, 12, 11, 13};
  private static final int[] EVEN = {1, 1, 1, 1, 1};

  private static double[] basis(Spline spline, double x) {
    double[] row = new double[2 + spline.width()];
    spline.fill(x, row, 1);
    assertThat(row[0]).isZero();
    assertThat(row[row.length - 1]).isZero();
    return java.util.Arrays.copyOfRange(row, 1, row.length - 1);
  }

  @Test
  void basis_is_cubic_between_knots_and_straight_outside() {
    Spline spline = Spline.through(VALUES, EVEN, 2);
    assertThat(spline.width()).isEqualTo(2);
    assertThat(basis(spline, 10)).containsExactly(0, 0);
    assertThat(basis(spline, 11)).containsExactly(new double[] {0.25, 1 / 64.0}, within(1e-15));
    assertThat(basis(spline, 12)).containsExactly(new double[] {0.5, 0.125}, within(1e-15));
    assertThat(basis(spline, 13)).containsExactly(new double[] {0.75, 0.390625}, within(1e-15));
    assertThat(basis(spline, 14)).containsExactly(new double[] {1, 0.75}, within(1e-15));
    assertThat(basis(spline, 15)).containsExactly(new double[] {1.25, 1.125}, within(1e-15));
    assertThat(basis(spline, 18)).containsExactly(new double[] {2, 2.25}, within(1e-14));
    assertThat(basis(spline, 8)).containsExactly(new double[] {-0.5, 0}, within(1e-15));
  }

  /** Knots 0, 1, 4, 9 on a span of 9: at 2, 8/729 / 1 and 1/729 / (8/9), less none of the last. */
  @Test
  void every_inner_knot_has_a_column_of_its_own() {
    Spline spline = Spline.through(new double[] {0, 1, 4, 9}, new int[] {1, 1, 1, 1}, 3);
    assertThat(basis(spline, 2))
        .containsExactly(new double[] {2 / 9.0, 8 / 729.0, 9 / 8.0 / 729}, within(1e-15));
  }

  /** Of 1 + 3 + 1 + 1 + 1 grafts the middle one, the fourth, stands at 2. */
  @Test
  void knots_lie_at_quantiles_of_grafts_not_of_values() {
    double[] values = {1, 2, 3, 4, 5};
    Spline byGrafts = Spline.through(values, new int[] {1, 3, 1, 1, 1}, 2);
    Spline knotAt2 = Spline.through(new double[] {1, 2, 5}, new int[] {1, 1, 1}, 2);
    assertThat(basis(byGrafts, 3.5)).containsExactly(basis(knotAt2, 3.5), within(1e-15));
  }

  @Test
  void too_few_different_values_have_no_spline() {
    assertThat(Spline.through(new double[] {1, 1, 1, 2}, new int[] {1, 1, 1, 1}, 2)).isNull();
  }
}
