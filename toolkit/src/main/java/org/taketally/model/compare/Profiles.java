package org.taketally.model.compare;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.taketally.model.LikelihoodLoss;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.terms.Interval;

/**
 * Profile-likelihood intervals: values for which the best fit loses no more log-likelihood than
 * chance explains. Unlike Wald intervals they may be lopsided, and a standard deviation's may start
 * at exactly 0.
 */
public final class Profiles {

  private static final int MOST_STEPS = 40;

  private final TakeFit fit;
  private final LikelihoodLoss loss;

  private Profiles(TakeFit fit) {
    this.fit = fit;
    this.loss = LikelihoodLoss.of(fit);
  }

  /**
   * Profiles of a fit.
   *
   * @param fit any fit
   * @return ready to give intervals
   */
  public static Profiles of(TakeFit fit) {
    return new Profiles(fit);
  }

  /**
   * Interval of a fixed effect.
   *
   * @param place place in {@link TakeFit#fixed()}
   * @param coverage coverage, strictly between 0 and 1
   * @return limits in logits
   */
  public Interval fixed(int place, double coverage) {
    double estimate = fit.beta()[place];
    double reach = cutoff(coverage);
    double error = Math.sqrt(fit.betaCovariance()[place][place]);
    DoubleUnaryOperator excess = value -> loss.atEffect(place, value) - reach;
    return new Interval(
        root(excess, estimate, -1.5 * Math.sqrt(reach) * error),
        root(excess, estimate, 1.5 * Math.sqrt(reach) * error),
        coverage);
  }

  /**
   * Interval of a standard deviation.
   *
   * @param column a varying column of the fit
   * @param coverage coverage, strictly between 0 and 1
   * @return limits in logits, the lower 0 if no spread at all is within reason
   */
  public Interval standardDeviation(String column, double coverage) {
    int k = fit.varying().stream().map(VaryingFactor::factor).toList().indexOf(column);
    if (k < 0) {
      throw new IllegalArgumentException(column + " doesn't vary in this fit");
    }
    double estimate = fit.varying().get(k).standardDeviation();
    double reach = cutoff(coverage);
    DoubleUnaryOperator excess = sd -> loss.atStandardDeviation(k, sd) - reach;
    double low = 0;
    if (estimate > 0 && excess.applyAsDouble(0) > 0) {
      low = new BrentSolver(1e-6 * estimate).solve(MOST_STEPS, excess::applyAsDouble, 0, estimate);
    }
    return new Interval(low, root(excess, estimate, Math.max(0.3, estimate)), coverage);
  }

  private static double cutoff(double coverage) {
    if (!(coverage > 0 && coverage < 1)) {
      throw new IllegalArgumentException("coverage must lie between 0 and 1, got " + coverage);
    }
    return ChiSquaredDistribution.of(1).inverseCumulativeProbability(coverage);
  }

  /** Where the excess crosses zero, on the side of {@code step}. */
  private static double root(DoubleUnaryOperator excess, double estimate, double step) {
    double near = estimate;
    double far = estimate + step;
    for (int widening = 0; widening < MOST_STEPS && !(excess.applyAsDouble(far) > 0); widening++) {
      near = far;
      far += step;
    }
    return new BrentSolver(1e-6 * Math.abs(step))
        .solve(MOST_STEPS, excess::applyAsDouble, Math.min(near, far), Math.max(near, far));
  }
}
