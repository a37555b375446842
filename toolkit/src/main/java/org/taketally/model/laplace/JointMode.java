package org.taketally.model.laplace;

import java.util.Arrays;
import java.util.random.RandomGenerator;
import org.taketally.model.numeric.Parallel;

/**
 * The posterior of (beta, deviations) given tau: Gaussian at the joint modes, with the first-order
 * correction of means and with third cumulants, as the simplified Laplace of Rue, Martino and
 * Chopin (2009), section 3.2.3, on the scale of all effects together:
 *
 * <pre>
 *   mean  = mode - K A'(w' v) / 2          third cumulant of x = - sum w' cov(eta, x)^3
 * </pre>
 *
 * <p>Jeffreys' prior of beta is |I(beta)|^(1/2), I the information about beta once deviations are
 * allowed for. Its slope takes out of v what is due to beta, so that v becomes the variance of eta
 * given beta.
 */
public final class JointMode {

  /** Skewness beyond which the third cumulant alone no longer shapes a density. */
  private static final double MOST_SKEW = 0.9;

  public final double logDensity;
  private final BlockFactor factor;
  private final SortedCells sorted;
  public final LevelVector mode;
  private final CellPass pass;
  private final Parallel parallel;
  private LevelVector mean;

  /** Standard deviations, fixed effects last; after {@link #correct}. */
  public LevelVector sd;

  /** Covariance of the remainder and fixed effects; after {@link #correct}. */
  public double[][] restCovariance;

  private LevelVector skewness;

  public JointMode(
      double logDensity, BlockFactor factor, LevelVector mode, CellPass pass, Parallel parallel) {
    this.logDensity = logDensity;
    this.factor = factor;
    this.sorted = factor.sorted;
    this.mode = mode;
    this.pass = pass;
    this.parallel = parallel;
  }

  /**
   * Works out means and skewness; to be called before the next modes are sought.
   *
   * @param jeffreys prior of beta: Jeffreys' if true, else flat
   */
  public JointMode correct(boolean jeffreys) {
    SelectedInverse inverse = new SelectedInverse(factor, true, parallel);
    restCovariance = inverse.rest;
    JointSums sums = new JointSums(inverse, pass, jeffreys, parallel);
    LevelVector shift = sums.slopes();
    timesCovariance(shift);
    mean = mode.copy();
    mean.add(-0.5, shift);
    sd = sums.variances();
    skewness = sums.cubes();
    for (int part = 0; part <= sorted.depths; part++) {
      standardise(sd.at(part), skewness.at(part));
    }
    return this;
  }

  /** Turns variances and third cumulants, in place, into standard deviations and skewnesses. */
  private static void standardise(double[] variances, double[] cumulants) {
    for (int at = 0; at < variances.length; at++) {
      double s = Math.sqrt(Math.max(0, variances[at]));
      double raw = s > 0 ? -cumulants[at] / (s * s * s) : 0;
      variances[at] = s;
      cumulants[at] = Math.max(-MOST_SKEW, Math.min(MOST_SKEW, raw));
    }
  }

  /** Covariance of every effect with one fixed effect. */
  public LevelVector covarianceWith(int fixed) {
    LevelVector column = new LevelVector(sorted);
    column.rest[sorted.rest + fixed] = 1;
    timesCovariance(column);
    return column;
  }

  private void timesCovariance(LevelVector vector) {
    factor.scales.apply(vector);
    new BlockSolver(factor).solveJoint(vector);
    factor.scales.apply(vector);
  }

  public double[] beta() {
    return Arrays.copyOfRange(mode.rest, sorted.rest, mode.rest.length);
  }

  /** One draw of deviations, fixed effects last. */
  public LevelVector draw(RandomGenerator random) {
    LevelVector x = new LevelVector(sorted);
    for (int part = 0; part <= sorted.depths; part++) {
      Arrays.setAll(x.at(part), at -> random.nextGaussian());
    }
    new BlockSolver(factor).draw(x);
    factor.scales.apply(x);
    for (int part = 0; part <= sorted.depths; part++) {
      bend(x.at(part), mean.at(part), sd.at(part), skewness.at(part));
    }
    return x;
  }

  /** Turns normal deviations, in place, into values of these means and skewnesses. */
  private static void bend(double[] x, double[] means, double[] sds, double[] skewnesses) {
    for (int at = 0; at < x.length; at++) {
      double s = sds[at];
      double z = s > 0 ? x[at] / s : 0;
      double g = skewnesses[at];
      double bent = (z + g / 6 * (z * z - 1)) / Math.sqrt(1 + g * g / 18);
      x[at] = means[at] + s * bent;
    }
  }
}
