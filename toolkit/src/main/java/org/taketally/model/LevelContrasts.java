package org.taketally.model;

import java.util.random.RandomGenerator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.taketally.model.laplace.JointMode;
import org.taketally.model.numeric.ChiSquares;
import org.taketally.model.numeric.LogLinearDensity;
import org.taketally.model.numeric.Parallel;
import org.taketally.model.numeric.SmallMatrix;
import org.taketally.model.numeric.Vectors;

/**
 * Differences of levels from one of them, measured with normal error.
 *
 * <pre>
 *   d ~ N(delta, S)           delta = 0 if levels are alike
 *   delta ~ N(0, tau (I + 1 1'))   if levels vary with variance tau
 *   S = L L',  L^-1 (I + 1 1') L^-T = E diag(lambda) E',  z = E' L^-1 d
 *   log p(d; tau) = - sum[log(1 + tau lambda) + z^2 / (1 + tau lambda)] / 2
 * </pre>
 */
final class LevelContrasts {

  /** A standard deviation to begin with, logits, and intervals its density is tabulated in. */
  private static final double LIKELY = 0.2;

  private static final int INTERVALS = 48;

  private final SmallMatrix root;
  private final RealMatrix turned;
  private final double[] z;
  private final double[] lambda;
  private LogLinearDensity spread;

  /**
   * From differences.
   *
   * @param differences of each level from one more, logits
   * @param covariance of the differences
   */
  LevelContrasts(double[] differences, double[][] covariance) {
    root = SmallMatrix.of(covariance);
    if (root == null) {
      throw new IllegalStateException("levels that can't be told apart aren't fitted");
    }
    int size = differences.length;
    double[][] spread = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        spread[i][j] = i == j ? 2 : 1;
      }
      spread[i] = root.solveLower(spread[i]);
    }
    double[][] inside = new Array2DRowRealMatrix(spread, false).transpose().getData();
    for (int i = 0; i < size; i++) {
      inside[i] = root.solveLower(inside[i]);
    }
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < i; j++) {
        inside[i][j] = inside[j][i];
      }
    }
    EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(inside, false));
    this.turned = eigen.getV();
    this.lambda = eigen.getRealEigenvalues();
    this.z = turn(differences);
  }

  private double[] turn(double[] differences) {
    return turned.preMultiply(root.solveLower(differences));
  }

  /**
   * Differences drawn with the levels free, as they would be drawn with the levels varying around a
   * common mean: each turned one on its own, w = w0 + k (z - w0) with w0 drawn from N(0, tau
   * lambda) and k = tau lambda / (1 + tau lambda).
   *
   * @param differences one draw, levels free
   */
  double[] drawnTogether(double[] differences, RandomGenerator random) {
    double sd = spread().quantile(random.nextDouble());
    double[] w = turn(differences);
    for (int i = 0; i < w.length; i++) {
      double variance = sd * sd * lambda[i];
      double own = Math.sqrt(variance) * random.nextGaussian();
      w[i] = own + variance / (1 + variance) * (w[i] - own);
    }
    return root.times(turned.operate(w));
  }

  /** Density of the standard deviation of the levels, with the usual prior. */
  private synchronized LogLinearDensity spread() {
    if (spread == null) {
      Prior prior = Prior.usual();
      spread =
          LogLinearDensity.of(
              LIKELY, INTERVALS, sd -> logDensity(sd * sd) + prior.logDensity(sd), new Parallel(1));
    }
    return spread;
  }

  /** Of levels of the remainder, as differences from the last. */
  static LevelContrasts of(JointMode mode, int[] places) {
    int size = places.length - 1;
    int last = places[size];
    double[] differences = new double[size];
    double[][] covariance = new double[size][size];
    double[][] k = mode.restCovariance;
    for (int i = 0; i < size; i++) {
      differences[i] = mode.mode.rest[places[i]] - mode.mode.rest[last];
      for (int j = 0; j < size; j++) {
        covariance[i][j] =
            k[places[i]][places[j]] - k[places[i]][last] - k[last][places[j]] + k[last][last];
      }
    }
    return new LevelContrasts(differences, covariance);
  }

  LevelTest anyDifference() {
    double chiSquare = Vectors.dot(z, z);
    double pValue = ChiSquaredDistribution.of(z.length).survivalProbability(chiSquare);
    return new LevelTest(chiSquare, z.length, pValue);
  }

  LevelTest anySpread() {
    double highest = 0;
    for (int i = 0; i < z.length; i++) {
      highest = Math.max(highest, z[i] * z[i] / lambda[i]);
    }
    double best =
        highest == 0
            ? logDensity(0)
            : new BrentOptimizer(1e-10, 1e-14)
                .optimize(
                    new UnivariateObjectiveFunction(sd -> logDensity(sd * sd)),
                    GoalType.MAXIMIZE,
                    new SearchInterval(0, Math.sqrt(highest)),
                    new MaxEval(500))
                .getValue();
    double chiSquare = Math.max(0, 2 * (best - logDensity(0)));
    return new LevelTest(chiSquare, 1, ChiSquares.upperAtEdge(chiSquare, 0, 1));
  }

  private double logDensity(double tau) {
    double sum = 0;
    for (int i = 0; i < z.length; i++) {
      double scale = 1 + tau * lambda[i];
      sum -= Math.log(scale) + z[i] * z[i] / scale;
    }
    return sum / 2;
  }
}
