package org.taketally.answers.counts;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Normal and chi-square tails, and the check of a coverage, shared by this package. */
public final class Quantiles {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private Quantiles() {}

  /** The z with probability {@code coverage} between -z and z; checks the coverage. */
  public static double twoSided(double coverage) {
    if (!(coverage > 0 && coverage < 1)) {
      throw new IllegalArgumentException(
          "coverage must lie between 0 and 1, e.g. 0.95, got %s".formatted(coverage));
    }
    return NORMAL.inverseSurvivalProbability((1 - coverage) / 2);
  }

  /** The z that chance exceeds with probability {@code tail}. */
  static double upper(double tail) {
    return NORMAL.inverseSurvivalProbability(tail);
  }

  /** Chance of a standard normal above z. */
  static double above(double z) {
    return NORMAL.survivalProbability(z);
  }

  /** Chance of a standard normal below z. */
  static double below(double z) {
    return NORMAL.cumulativeProbability(z);
  }

  /** Chance of a chi-square above the statistic. */
  static double chiSquareAbove(double statistic, int degreesOfFreedom) {
    return ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(statistic);
  }
}
