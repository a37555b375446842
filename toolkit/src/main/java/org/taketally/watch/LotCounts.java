package org.taketally.watch;

import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.util.CombinatoricsUtils;

/** The beta-binomial counts of a lot whose grafts share luck; binomial where they don't. */
final class LotCounts {

  private LotCounts() {}

  /** Log of the chance of so many takes. */
  static double logProbability(int takes, int grafts, double take, double correlation) {
    double ways = CombinatoricsUtils.binomialCoefficientLog(grafts, takes);
    if (correlation == 0 || grafts == 1) {
      return ways + takes * Math.log(take) + (grafts - takes) * Math.log1p(-take);
    }
    double a = take * (1 - correlation) / correlation;
    double b = (1 - take) * (1 - correlation) / correlation;
    return ways + Beta.logBeta(a + takes, b + grafts - takes) - Beta.logBeta(a, b);
  }

  static double[] chances(int grafts, double take, double correlation) {
    double[] chances = new double[grafts + 1];
    for (int y = 0; y <= grafts; y++) {
      chances[y] = Math.exp(logProbability(y, grafts, take, correlation));
    }
    return chances;
  }

  /** The take if the odds of failing were {@code oddsRatio} times as high. */
  static double shifted(double take, double oddsRatio) {
    return take / (take + oddsRatio * (1 - take));
  }
}
