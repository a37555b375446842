package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SmallMatrixTest {

  /** [4, 2; 2, 5] = L L' with L = [2, 0; 1, 2]; worked out by hand. */
  @Test
  void root_solutions_and_determinant_are_those_worked_out_by_hand() {
    SmallMatrix root = SmallMatrix.of(new double[][] {{4, 2}, {2, 5}});
    assertThat(root.times(new double[] {1, 1})).containsExactly(2, 3);
    assertThat(root.solve(new double[] {8, 12}))
        .containsExactly(new double[] {1, 2}, within(1e-15));
    assertThat(root.inverse()[0]).containsExactly(new double[] {5 / 16.0, -1 / 8.0}, within(1e-15));
    assertThat(root.logDeterminant()).isCloseTo(Math.log(16), within(1e-15));
    assertThat(SmallMatrix.of(new double[][] {{1, 1}, {1, 1}})).isNull();
  }

  /** Columns (1, 1) alike: any solution of x1 + x2 = 2, the steadied one x1 = x2 = 1. */
  @Test
  void a_singular_matrix_is_steadied_as_little_as_it_takes() {
    double[] x = SmallMatrix.ofSteadied(new double[][] {{1, 1}, {1, 1}}).solve(new double[] {2, 2});
    assertThat(x).containsExactly(new double[] {1, 1}, within(1e-4));
    double[] apart =
        SmallMatrix.ofSteadied(new double[][] {{9, 0}, {0, 0}}).solve(new double[] {18, 0});
    assertThat(apart).containsExactly(new double[] {2, 0}, within(1e-6));
  }
}
