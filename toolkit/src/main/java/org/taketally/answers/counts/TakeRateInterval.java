package org.taketally.answers.counts;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.taketally.terms.Interval;

/**
 * Intervals for one take rate. Pages show Wilson's; docs/intervals.md says why.
 *
 * <pre>
 *   x, n   takes and grafts        p = x / n, q = 1 - p
 *   z      normal quantile of the coverage, two-sided
 * </pre>
 */
public final class TakeRateInterval {

  private TakeRateInterval() {}

  /**
   * Wilson score interval.
   *
   * @param takes grafts that took, 0 to {@code grafts}
   * @param grafts grafts assessed, at least 1
   * @param coverage coverage, strictly between 0 and 1, e.g. 0.95
   * @return limits on the take-rate scale, within [0, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a href="https://doi.org/10.1080/01621459.1927.10502953">Wilson (1927)</a>
   */
  public static Interval wilson(long takes, long grafts, double coverage) {
    TakeCount count = new TakeCount(takes, grafts).assessed();
    double z = Quantiles.twoSided(coverage);
    double n = grafts;
    double middle = takes + z * z / 2;
    double half = z * Math.sqrt(n * count.rate() * (1 - count.rate()) + z * z / 4);
    double low = takes == 0 ? 0 : (middle - half) / (n + z * z);
    double high = takes == grafts ? 1 : (middle + half) / (n + z * z);
    return new Interval(low, high, coverage);
  }

  /**
   * Wilson score interval with continuity correction, as R's prop.test gives it.
   *
   * @param takes grafts that took, 0 to {@code grafts}
   * @param grafts grafts assessed, at least 1
   * @param coverage coverage, strictly between 0 and 1
   * @return limits on the take-rate scale, within [0, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a
   *     href="https://doi.org/10.1002/(SICI)1097-0258(19980430)17:8%3C857::AID-SIM777%3E3.0.CO;2-E">Newcombe
   *     (1998a), method 4</a>
   */
  public static Interval wilsonWithContinuity(long takes, long grafts, double coverage) {
    TakeCount count = new TakeCount(takes, grafts).assessed();
    double z = Quantiles.twoSided(coverage);
    double n = grafts;
    double p = count.rate();
    double q = 1 - p;
    double lower = z * Math.sqrt(z * z - 2 - 1 / n + 4 * p * (n * q + 1));
    double upper = z * Math.sqrt(z * z + 2 - 1 / n + 4 * p * (n * q - 1));
    double low = takes == 0 ? 0 : (2 * n * p + z * z - 1 - lower) / (2 * (n + z * z));
    double high = takes == grafts ? 1 : (2 * n * p + z * z + 1 + upper) / (2 * (n + z * z));
    return new Interval(Math.max(0, low), Math.min(1, high), coverage);
  }

  /**
   * Clopper-Pearson interval: never covers less often than {@code coverage} says, so it is wide.
   *
   * @param takes grafts that took, 0 to {@code grafts}
   * @param grafts grafts assessed, at least 1
   * @param coverage coverage, strictly between 0 and 1
   * @return limits on the take-rate scale, within [0, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a href="https://doi.org/10.1093/biomet/26.4.404">Clopper and Pearson (1934)</a>
   */
  public static Interval clopperPearson(long takes, long grafts, double coverage) {
    TakeCount count = new TakeCount(takes, grafts).assessed();
    double tail = tail(coverage);
    double low =
        takes == 0
            ? 0
            : BetaDistribution.of((double) takes, count.failures() + 1.0)
                .inverseCumulativeProbability(tail);
    double high =
        takes == grafts
            ? 1
            : BetaDistribution.of(takes + 1.0, (double) count.failures())
                .inverseSurvivalProbability(tail);
    return new Interval(low, high, coverage);
  }

  /**
   * Jeffreys interval: equal tails of the beta posterior after a Beta(1/2, 1/2) prior; 0 and 1 are
   * kept as limits when none or all took.
   *
   * @param takes grafts that took, 0 to {@code grafts}
   * @param grafts grafts assessed, at least 1
   * @param coverage coverage, strictly between 0 and 1
   * @return limits on the take-rate scale, within [0, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a href="https://doi.org/10.1214/ss/1009213286">Brown, Cai and DasGupta (2001)</a>
   */
  public static Interval jeffreys(long takes, long grafts, double coverage) {
    TakeCount count = new TakeCount(takes, grafts).assessed();
    double tail = tail(coverage);
    BetaDistribution belief = BetaDistribution.of(takes + 0.5, count.failures() + 0.5);
    double low = takes == 0 ? 0 : belief.inverseCumulativeProbability(tail);
    double high = takes == grafts ? 1 : belief.inverseSurvivalProbability(tail);
    return new Interval(low, high, coverage);
  }

  /**
   * Agresti-Coull interval: the textbook formula after adding z^2/2 takes and z^2/2 failures.
   *
   * @param takes grafts that took, 0 to {@code grafts}
   * @param grafts grafts assessed, at least 1
   * @param coverage coverage, strictly between 0 and 1
   * @return limits on the take-rate scale, cut to [0, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a href="https://doi.org/10.1080/00031305.1998.10480550">Agresti and Coull (1998)</a>
   */
  public static Interval agrestiCoull(long takes, long grafts, double coverage) {
    new TakeCount(takes, grafts).assessed();
    double z = Quantiles.twoSided(coverage);
    double n = grafts + z * z;
    double p = (takes + z * z / 2) / n;
    double half = z * Math.sqrt(p * (1 - p) / n);
    return new Interval(Math.max(0, p - half), Math.min(1, p + half), coverage);
  }

  /**
   * The textbook interval, rate plus or minus z standard errors. Covers far too rarely for small
   * counts or rates near 0 or 1; kept for checks by hand.
   *
   * @param takes grafts that took, 0 to {@code grafts}
   * @param grafts grafts assessed, at least 1
   * @param coverage coverage, strictly between 0 and 1
   * @return limits on the take-rate scale, not cut to [0, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static Interval wald(long takes, long grafts, double coverage) {
    TakeCount count = new TakeCount(takes, grafts).assessed();
    double half = Quantiles.twoSided(coverage) * count.standardError();
    return new Interval(count.rate() - half, count.rate() + half, coverage);
  }

  private static double tail(double coverage) {
    Quantiles.twoSided(coverage);
    return (1 - coverage) / 2;
  }
}
