package org.taketally.plan.order;

import org.apache.commons.math3.special.Beta;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Takes of a lot whose grafts share their luck: the take of the lot varies as a beta distribution
 * about its mean.
 *
 * <pre>
 *   p   take      rho   correlation of two grafts of the lot
 *   a = p (1 - rho) / rho      b = (1 - p)(1 - rho) / rho      binomial where rho = 0
 * </pre>
 *
 * @param take expected take, above 0 and at most 1
 * @param correlation of two grafts of the same lot (intraclass), 0 or more and below 1; 0 if grafts
 *     are independent
 * @see "Skellam (1948), Journal of the Royal Statistical Society B 10, 257-261"
 */
public record BetaBinomialTakes(double take, double correlation) implements LotTakes {

  public BetaBinomialTakes {
    if (!(take > 0 && take <= 1)) {
      throw new IllegalArgumentException(
          "a take must be above 0 and at most 1, e.g. 0.75, got %s: nothing can be grown from grafts that never take"
              .formatted(take));
    }
    requireCorrelation(correlation);
  }

  static void requireCorrelation(double correlation) {
    if (!(correlation >= 0 && correlation < 1)) {
      throw new IllegalArgumentException(
          "the correlation of grafts that share luck must be 0 or more and below 1, e.g. 0.05, got "
              + correlation);
    }
  }

  @Override
  public double expectedShare() {
    return take;
  }

  @Override
  public double probabilityOfAtLeast(int trees, int grafts) {
    if (trees <= 0) {
      return 1;
    }
    if (trees > grafts) {
      return 0;
    }
    if (take == 1) {
      return 1;
    }
    if (correlation == 0) {
      return BinomialDistribution.of(grafts, take).survivalProbability(trees - 1);
    }
    double fewer = 0;
    for (double chance : probabilities(grafts, trees)) {
      fewer += chance;
    }
    return Math.max(0, 1 - fewer);
  }

  /** Chances of 0, 1, ... takes, the first {@code count} of them. */
  double[] probabilities(int grafts, int count) {
    double[] chances = new double[count];
    if (take == 1 || correlation == 0) {
      BinomialDistribution binomial = BinomialDistribution.of(grafts, take);
      java.util.Arrays.setAll(chances, binomial::probability);
      return chances;
    }
    double a = take * (1 - correlation) / correlation;
    double b = (1 - take) * (1 - correlation) / correlation;
    double log = Beta.logBeta(a, b + grafts) - Beta.logBeta(a, b);
    for (int k = 0; k < count; k++) {
      chances[k] = Math.exp(log);
      log += Math.log((grafts - k) / (k + 1.0)) + Math.log((a + k) / (b + grafts - k - 1));
    }
    return chances;
  }
}
