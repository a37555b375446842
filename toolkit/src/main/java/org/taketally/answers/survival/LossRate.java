package org.taketally.answers.survival;

import java.util.List;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.taketally.answers.counts.Quantiles;
import org.taketally.terms.Interval;

/**
 * Losses per day of watching, taking each day as dangerous as the next.
 *
 * @param lost grafts found lost, 0 or more
 * @param graftDays days watched, summed over grafts, above 0
 */
public record LossRate(long lost, double graftDays) {

  public LossRate {
    if (lost < 0 || !(graftDays > 0)) {
      throw new IllegalArgumentException(
          "a rate needs 0 or more losses over more than 0 days, got %d over %s"
              .formatted(lost, graftDays));
    }
  }

  /**
   * The rate of some grafts.
   *
   * @param grafts watched for more than 0 days in all
   * @return losses and days
   */
  public static LossRate of(List<FollowUp> grafts) {
    return new LossRate(
        grafts.stream().filter(FollowUp::lost).mapToLong(FollowUp::grafts).sum(),
        grafts.stream().mapToDouble(graft -> graft.days() * graft.grafts()).sum());
  }

  /**
   * Losses per graft and day.
   *
   * @return 0 or more
   */
  public double perDay() {
    return lost / graftDays;
  }

  /**
   * Exact Poisson interval of the rate.
   *
   * @param coverage coverage, strictly between 0 and 1, e.g. 0.95
   * @return losses per graft and day
   * @see "Garwood (1936), Biometrika 28, 437-442"
   */
  public Interval interval(double coverage) {
    Quantiles.twoSided(coverage);
    double tail = (1 - coverage) / 2;
    double low =
        lost == 0 ? 0 : GammaDistribution.of((double) lost, 1).inverseCumulativeProbability(tail);
    double high = GammaDistribution.of(lost + 1.0, 1).inverseSurvivalProbability(tail);
    return new Interval(low / graftDays, high / graftDays, coverage);
  }
}
