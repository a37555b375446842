package org.taketally.model.laplace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Differences of a gradient known in closed form. */
class CurvatureTest {

  /** Information of log L = -(x - m)'A(x - m) / 2 in x = (tau, beta) is A. */
  private static final double[][] A = {{5, 2, 1}, {2, 40, -3}, {1, -3, 9}};

  private final List<double[]> asked = new ArrayList<>();

  private final Marginal quadratic =
      new Marginal() {
        @Override
        public Marginal another() {
          return this;
        }

        @Override
        public LikelihoodPoint at(double[] tau, double[] beta) {
          asked.add(new double[] {tau[0], tau[1], beta[0]});
          return new LikelihoodPoint(tau, beta);
        }

        @Override
        public void differentiate(LikelihoodPoint point) {
          point.gradient = new double[3];
          for (int i = 0; i < 3; i++) {
            point.gradient[i] =
                -A[i][0] * point.tau[0] - A[i][1] * point.tau[1] - A[i][2] * point.beta[0];
          }
        }
      };

  private LikelihoodPoint point(double first, double second, double information) {
    LikelihoodPoint point = new LikelihoodPoint(new double[] {first, second}, new double[] {0.3});
    quadratic.differentiate(point);
    point.information =
        new double[][] {{information, 0, 0}, {0, information, 0}, {0, 0, information}};
    return point;
  }

  @Test
  void information_is_that_of_the_parameters_asked_for() {
    double[][] all = Curvature.at(quadratic, point(1, 2, 25), new int[] {0, 1, 2});
    for (int i = 0; i < 3; i++) {
      assertThat(all[i]).containsExactly(A[i], within(1e-6));
    }
    double[][] some = Curvature.at(quadratic, point(1, 2, 25), new int[] {1, 2});
    assertThat(some[0]).containsExactly(new double[] {40, -3}, within(1e-6));
    assertThat(some[1]).containsExactly(new double[] {-3, 9}, within(1e-6));
  }

  /** Information 1e6, standard errors 0.001: no step is a hundredth of one. */
  @Test
  void steps_are_a_small_part_of_a_standard_error() {
    Curvature.at(quadratic, point(1, 2, 1e6), new int[] {0, 1, 2});
    double[] here = {1, 2, 0.3};
    for (double[] x : asked) {
      for (int i = 0; i < 3; i++) {
        assertThat(x[i]).isCloseTo(here[i], within(1e-5));
      }
    }
    assertThat(asked).hasSize(5);
  }

  @Test
  void variances_next_to_zero_stay_above_it() {
    Curvature.at(quadratic, point(1e-4, 2, 1e-6), new int[] {0});
    assertThat(asked).allSatisfy(x -> assertThat(x[0]).isGreaterThan(0.9e-4));
  }
}
