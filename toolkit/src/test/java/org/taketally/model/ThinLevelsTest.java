package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.FitWarning.Kind;
import org.taketally.model.laplace.LevelIntegrals;
import org.taketally.model.laplace.ModelData;
import org.taketally.terms.Logit;
import org.taketally.terms.Provenance;

/** Laplace's approximation against quadrature and importance sampling, where levels are thin. */
class ThinLevelsTest {

  /** Single grafts, each of one level of every column; deviations of the columns as stated. */
  private static Cells grafts(long seed, int grafts, int[] levels, double[] sds) {
    Random random = new Random(seed);
    double[] eta = new double[grafts];
    Arrays.fill(eta, 0.4);
    Factor[] factors = new Factor[levels.length];
    for (int k = 0; k < levels.length; k++) {
      int size = levels[k];
      int[] codes = new int[grafts];
      int column = k;
      Arrays.setAll(codes, i -> column == 0 ? i % size : random.nextInt(size));
      double[] deviations = random.doubles(size).toArray();
      double sd = sds[k];
      Arrays.setAll(deviations, j -> sd * random.nextGaussian());
      for (int i = 0; i < grafts; i++) {
        eta[i] += deviations[codes[i]];
      }
      factors[k] =
          new Factor("c" + k, IntStream.range(0, size).mapToObj(j -> "L" + j).toList(), codes);
    }
    int[] takes = new int[grafts];
    Arrays.setAll(takes, i -> random.nextDouble() < Logit.take(eta[i]) ? 1 : 0);
    int[] ones = new int[grafts];
    Arrays.fill(ones, 1);
    return new Cells(List.of(factors), List.of(), ones, takes, 0, Provenance.of("made up", grafts));
  }

  private static List<FitWarning> thin(TakeFit fit) {
    return fit.warnings().stream().filter(w -> w.kind() == Kind.THIN_LEVELS).toList();
  }

  @Test
  void the_shift_foretold_is_that_of_a_fit_by_quadrature() {
    for (int perLevel : new int[] {2, 4, 8}) {
      Cells cells = grafts(3, 100 * perLevel, new int[] {100}, new double[] {1.5});
      TakeModel model = TakeModel.ofTakes().varyBy("c0");
      TakeFit laplace = model.fit(cells);
      double found = variance(model.nodes(25).fit(cells), "c0") - variance(laplace, "c0");
      assertThat(found).as("%d a level", perLevel).isPositive();
      assertThat(laplace.varianceShifts()[0] / found)
          .as("%d a level", perLevel)
          .isBetween(0.5, 2.0);
    }
  }

  @Test
  void with_crossed_columns_the_slope_is_that_of_importance_sampling() {
    Cells cells = grafts(5, 240, new int[] {40, 30}, new double[] {1.2, 1.0});
    TakeFit fit = TakeModel.ofTakes().varyBy("c0", "c1").fit(cells);
    ModelData evidence = FitInput.of(fit.model(), cells).evidence();
    double[][] modes =
        fit.varying().stream().map(VaryingFactor::levelEffects).toArray(double[][]::new);
    double[] exact = slopesBySampling(fit, evidence, modes, 40_000);
    LevelIntegrals integrals = new LevelIntegrals(evidence, fit.linearPredictor(), modes);
    for (int k = 0; k < 2; k++) {
      double told = integrals.slope(k, variance(fit, "c" + k));
      assertThat(told / exact[k]).as("column %d", k).isBetween(0.5, 2.0);
    }
  }

  /**
   * Slopes in tau of the log-likelihood: half of (sum of v^2 expected / tau^2 - q / tau), the
   * deviations v drawn around their modes and weighted.
   */
  private static double[] slopesBySampling(
      TakeFit fit, ModelData evidence, double[][] modes, int draws) {
    int first = modes[0].length;
    int all = first + modes[1].length;
    double[] eta = fit.linearPredictor();
    double[] tau = {variance(fit, "c0"), variance(fit, "c1")};
    double[] mode = new double[all];
    System.arraycopy(modes[0], 0, mode, 0, first);
    System.arraycopy(modes[1], 0, mode, first, all - first);
    double[][] hessian = new double[all][all];
    for (int j = 0; j < all; j++) {
      hessian[j][j] = 1 / tau[j < first ? 0 : 1];
    }
    for (int i = 0; i < eta.length; i++) {
      double take = Logit.take(eta[i]);
      int[] at = {evidence.codes()[0][i], first + evidence.codes()[1][i]};
      for (int a : at) {
        for (int b : at) {
          hessian[a][b] += evidence.grafts()[i] * take * (1 - take);
        }
      }
    }
    RealMatrix covariance =
        new LUDecomposition(new Array2DRowRealMatrix(hessian)).getSolver().getInverse();
    RealMatrix root = new CholeskyDecomposition(covariance, 1e-8, 1e-10).getL();
    Random random = new Random(9);
    double[] logWeights = new double[draws];
    double[][] squares = new double[draws][2];
    for (int d = 0; d < draws; d++) {
      double[] z = new double[all];
      Arrays.setAll(z, j -> random.nextGaussian());
      double[] v = root.operate(z);
      double log = 0;
      for (int j = 0; j < all; j++) {
        v[j] += mode[j];
        log += z[j] * z[j] / 2 - v[j] * v[j] / 2 / tau[j < first ? 0 : 1];
        squares[d][j < first ? 0 : 1] += v[j] * v[j];
      }
      for (int i = 0; i < eta.length; i++) {
        int a = evidence.codes()[0][i];
        int b = first + evidence.codes()[1][i];
        double logit = eta[i] + v[a] - mode[a] + v[b] - mode[b];
        log += evidence.takes()[i] * logit - evidence.grafts()[i] * Logit.minusLogFailure(logit);
      }
      logWeights[d] = log;
    }
    double top = Arrays.stream(logWeights).max().orElseThrow();
    double total = 0;
    double[] sums = new double[2];
    for (int d = 0; d < draws; d++) {
      double weight = Math.exp(logWeights[d] - top);
      total += weight;
      sums[0] += weight * squares[d][0];
      sums[1] += weight * squares[d][1];
    }
    return new double[] {
      (sums[0] / total / tau[0] - first) / tau[0] / 2,
      (sums[1] / total / tau[1] - (all - first)) / tau[1] / 2
    };
  }

  @Test
  void thin_levels_are_warned_of_and_well_filled_ones_not() {
    TakeModel model = TakeModel.ofTakes().varyBy("c0");
    List<FitWarning> warnings =
        thin(model.fit(grafts(3, 300, new int[] {150}, new double[] {1.5})));
    assertThat(warnings).hasSize(1);
    assertThat(warnings.get(0).sentence())
        .contains("levels of c0 hold so few grafts (2.0 on average)", "too low");
    assertThat(thin(model.nodes(25).fit(grafts(3, 300, new int[] {150}, new double[] {1.5}))))
        .as("worked out exactly")
        .isEmpty();
    assertThat(thin(model.fit(grafts(3, 3_000, new int[] {60}, new double[] {1.5})))).isEmpty();
  }

  private static double variance(TakeFit fit, String column) {
    return Math.pow(fit.varying(column).standardDeviation(), 2);
  }
}
