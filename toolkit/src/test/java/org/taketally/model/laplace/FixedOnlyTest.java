package org.taketally.model.laplace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Logistic regression with as many effects as patterns: logits of the shares. */
class FixedOnlyTest {

  private static double[] fit(int[] takes, int[] grafts, int[] codes, double[][] rows) {
    Patterns patterns = new Patterns(codes, rows, rows[0].length);
    return FixedOnly.fit(
        new ModelData(takes, grafts, patterns, new int[0][], new int[0], new int[0]));
  }

  /** 4 of 7 and 4 of 4 are 8 of 11. */
  @Test
  void one_constant_is_the_logit_of_all_grafts_together() {
    double[] beta = fit(new int[] {4, 4}, new int[] {7, 4}, new int[] {0, 0}, new double[][] {{1}});
    assertThat(beta).containsExactly(new double[] {Math.log(8 / 3.0)}, within(1e-8));
  }

  /** 5 of 20 and 15 of 20: log odds -log 3 and log 3. */
  @Test
  void a_level_is_its_logit_less_that_of_the_base() {
    double[] beta =
        fit(
            new int[] {5, 15},
            new int[] {20, 20},
            new int[] {0, 1},
            new double[][] {{1, 0}, {1, 1}});
    assertThat(beta).containsExactly(new double[] {-Math.log(3), 2 * Math.log(3)}, within(1e-8));
  }

  /** At 0, 1 and 3: with takes 3, 5 and 9 of 10 the slopes of the likelihood are both zero. */
  @Test
  void a_line_leaves_nothing_over_along_itself() {
    int[] takes = {3, 5, 9};
    double[] x = {0, 1, 3};
    double[] beta =
        fit(
            takes,
            new int[] {10, 10, 10},
            new int[] {0, 1, 2},
            new double[][] {{1, 0}, {1, 1}, {1, 3}});
    double left = 0;
    double leftAlong = 0;
    for (int i = 0; i < 3; i++) {
      double over = takes[i] - 10 / (1 + Math.exp(-beta[0] - beta[1] * x[i]));
      left += over;
      leftAlong += over * x[i];
    }
    assertThat(left).isCloseTo(0, within(1e-5));
    assertThat(leftAlong).isCloseTo(0, within(1e-5));
  }

  @Test
  void columns_that_cannot_be_told_apart_end_the_search_where_it_stands() {
    double[] beta = fit(new int[] {5}, new int[] {20}, new int[] {0}, new double[][] {{1, 1}});
    assertThat(beta).containsExactly(0, 0);
  }
}
