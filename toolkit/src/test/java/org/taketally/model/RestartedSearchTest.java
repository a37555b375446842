package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;

/** Two hills, quadratic, the higher of both counting: which end is found from which starts. */
class RestartedSearchTest {

  /** Height, steepness and place of its top in (tau, tau); in beta both have theirs at 1. */
  private record Hill(double height, double steepness, double first, double second) {
    double at(double[] tau) {
      double a = tau[0] - first;
      double b = tau[1] - second;
      return height - steepness * (a * a + b * b) / 2;
    }
  }

  private record Hills(Hill low, Hill high) implements Marginal {
    private Hill over(double[] tau) {
      return low.at(tau) > high.at(tau) ? low : high;
    }

    @Override
    public Hills another() {
      return this;
    }

    @Override
    public LikelihoodPoint at(double[] tau, double[] beta) {
      LikelihoodPoint point = new LikelihoodPoint(tau, beta);
      point.logLikelihood = over(tau).at(tau) - (beta[0] - 1) * (beta[0] - 1) / 2;
      return point;
    }

    @Override
    public void differentiate(LikelihoodPoint point) {
      Hill hill = over(point.tau);
      double s = hill.steepness();
      point.gradient =
          new double[] {
            -s * (point.tau[0] - hill.first()),
            -s * (point.tau[1] - hill.second()),
            1 - point.beta[0]
          };
      point.information = new double[][] {{s, 0, 0}, {0, s, 0}, {0, 0, 1}};
    }
  }

  private static LikelihoodPoint run(Marginal hills, int cells, boolean... held) {
    boolean[] all = java.util.Arrays.copyOf(held, 3);
    return new RestartedSearch(hills, FitOptions.defaults(), all).run(new double[] {0}, cells);
  }

  private static void endsAt(LikelihoodPoint end, double height, double first, double second) {
    assertThat(end.logLikelihood).isCloseTo(height, within(1e-7));
    assertThat(end.tau).containsExactly(new double[] {first, second}, within(1e-4));
    assertThat(end.beta[0]).isCloseTo(1, within(1e-4));
  }

  /** From the usual start the low hill is climbed; the high one has the variances exchanged. */
  @Test
  void a_variance_at_zero_takes_the_place_of_another_to_find_a_higher_end() {
    Hills hills = new Hills(new Hill(-10, 2, 0, 0.6), new Hill(-9, 40, 0.6, 0));
    endsAt(run(hills, 1_000), -9, 0.6, 0);
    Hills lower = new Hills(new Hill(-10, 2, 0, 0.6), new Hill(-11, 40, 0.6, 0));
    endsAt(run(lower, 1_000), -10, 0, 0.6);
  }

  /** Of many cells all variances at zero are raised to the usual 0.25 first, those held not. */
  @Test
  void with_many_cells_variances_at_zero_are_raised_to_find_a_higher_end() {
    Hills hills = new Hills(new Hill(-10, 2, 0, 0.6), new Hill(-9, 100, 0.25, 0.6));
    endsAt(run(hills, 30_000), -9, 0.25, 0.6);
  }

  @Test
  void nothing_at_zero_is_an_end_with_many_cells() {
    Hills hills = new Hills(new Hill(-10, 2, 0.4, 0.6), new Hill(-9, 100, 0.6, 0));
    endsAt(run(hills, 30_000), -10, 0.4, 0.6);
  }

  /** Held at its start the first stays there. */
  @Test
  void what_is_held_is_not_moved() {
    Hills hills = new Hills(new Hill(-10, 2, 0, 0.6), new Hill(-9, 40, 0.6, 0));
    LikelihoodPoint end = run(hills, 1_000, true);
    assertThat(end.tau[0]).isEqualTo(RestartedSearch.USUAL_TAU);
    assertThat(end.tau[1]).isCloseTo(0.6, within(1e-4));
  }
}
