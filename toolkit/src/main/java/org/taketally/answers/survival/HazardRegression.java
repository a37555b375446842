package org.taketally.answers.survival;

import java.util.List;
import org.taketally.answers.counts.Quantiles;
import org.taketally.terms.Interval;

/**
 * Hazard of loss by periods between looks: proportional hazards when only the period of a loss is
 * known, by maximum likelihood. Each period has its own level; periods without losses drop out, and
 * so do those that lost all.
 *
 * <pre>
 *   n, d    grafts at risk in a period and lost in it      x   their values
 *   h = 1 - exp(-exp(eta))     eta = level of the period + x' b      (complementary log-log)
 *   log L = sum d log h - (n - d) exp(eta)
 *   e^b is the hazard ratio, the same as in continuous time
 * </pre>
 *
 * @param coefficients one per column of values
 * @param logLikelihood at the estimate, without binomial coefficients
 * @see "Prentice and Gloeckler (1978), Biometrics 34, 57-67"
 */
public record HazardRegression(List<Coefficient> coefficients, double logLikelihood) {

  /**
   * Grafts with the same values in one period.
   *
   * @param period number of the period
   * @param values one per coefficient
   * @param atRisk grafts alive at the start of the period and looked at through it, 0 or more
   * @param lost of those, found lost in it, 0 to {@code atRisk}
   */
  public record Exposure(int period, double[] values, long atRisk, long lost) {

    public Exposure {
      if (lost < 0 || lost > atRisk) {
        throw new IllegalArgumentException(
            "losses must be 0 to %d (at risk), got %d in period %d"
                .formatted(atRisk, lost, period));
      }
    }
  }

  /**
   * One log hazard ratio.
   *
   * @param name its column
   * @param value log hazard ratio per unit of the column
   * @param standardError from the observed information
   */
  public record Coefficient(String name, double value, double standardError) {

    /** The same where rows differ so many times as much as single grafts would. */
    Coefficient dispersed(double times) {
      return new Coefficient(name, value, Math.sqrt(times) * standardError);
    }

    /**
     * The hazard ratio.
     *
     * @return above 0; 1 means lost alike
     */
    public double ratio() {
      return Math.exp(value);
    }

    /**
     * Likely range of the hazard ratio.
     *
     * @param coverage coverage, strictly between 0 and 1, e.g. 0.95
     * @return limits, symmetric on the log scale
     */
    public Interval interval(double coverage) {
      double half = Quantiles.twoSided(coverage) * standardError;
      return new Interval(Math.exp(value - half), Math.exp(value + half), coverage);
    }
  }
}
