package org.taketally.plan.size;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Power where stocks are compared by the means of few units: t tests with as many independent
 * values as there are units.
 *
 * <pre>
 *   sigma   standard deviation of the difference of the two means      nu   degrees of freedom
 *   S^2 ~ chi-square(nu) / nu, so that the estimated error is sigma S
 *   differs:      P(|D| &gt; t_{1 - alpha/2} sigma S)         D normal about d with sd sigma
 *   equivalent:   P(-m + t_{1 - alpha} sigma S &lt; D &lt; m - t_{1 - alpha} sigma S)
 *   both: the chance given S (normal), averaged over S by Gauss-Legendre
 * </pre>
 *
 * @see "Phillips (1990), Journal of Pharmacokinetics and Biopharmaceutics 18, 137-144"
 */
final class FewUnitsPower {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final int NODES = 80;
  private static final double REACH = 7;

  private final double sigma;
  private final double freedom;

  /**
   * A comparison.
   *
   * @param sigma standard deviation of the difference of means, above 0
   * @param freedom degrees of freedom, 1 or more
   */
  FewUnitsPower(double sigma, double freedom) {
    this.sigma = sigma;
    this.freedom = freedom;
  }

  /**
   * Chance that a true difference is found, in either direction; {@code alpha} is that of a false
   * one, both sides together.
   */
  double differs(double difference, double alpha) {
    double t = TDistribution.of(freedom).inverseSurvivalProbability(alpha / 2);
    double d = difference / sigma;
    return average(
        s -> NORMAL.survivalProbability(t * s - d) + NORMAL.cumulativeProbability(-t * s - d),
        Double.POSITIVE_INFINITY);
  }

  /**
   * Chance that two stocks with this true difference are shown to differ by less than a margin;
   * {@code alpha} is the chance of error of either one-sided test.
   */
  double equivalent(double difference, double margin, double alpha) {
    double t = TDistribution.of(freedom).inverseSurvivalProbability(alpha);
    double high = (margin - difference) / sigma;
    double low = (-margin - difference) / sigma;
    return average(
        s -> NORMAL.cumulativeProbability(high - t * s) - NORMAL.cumulativeProbability(low + t * s),
        (high - low) / (2 * t));
  }

  /** Mean over the chi distribution of sqrt(nu) S, which is all but normal with sd 0.7. */
  private double average(DoubleUnaryOperator chance, double noneAbove) {
    ChiSquaredDistribution square = ChiSquaredDistribution.of(freedom);
    double middle = Math.sqrt(freedom);
    double from = Math.max(0, middle - REACH);
    double to = Math.min(middle + REACH, middle * noneAbove);
    if (!(to > from)) {
      return 0;
    }
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(NODES, from, to);
    return rule.integrate(x -> 2 * x * square.density(x * x) * chance.applyAsDouble(x / middle));
  }
}
