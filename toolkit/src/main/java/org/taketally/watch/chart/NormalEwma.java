package org.taketally.watch.chart;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Exponentially weighted moving average of standardised values: z = (1 - w) z + w x, alarm beyond c
 * of its own long-run standard deviations, sqrt(w / (2 - w)), on either side.
 *
 * @param weight w, of the newest value, above 0, at most 1, e.g. 0.1
 * @param limit c, above 0, e.g. 2.7
 * @see "Roberts (1959), Technometrics 1, 239-250"
 */
public record NormalEwma(double weight, double limit) {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  public NormalEwma {
    if (!(weight > 0 && weight <= 1)) {
      throw new IllegalArgumentException(
          "the weight of the newest value must be above 0 and at most 1, e.g. 0.1, got " + weight);
    }
    ChartLimits.require(limit);
  }

  /**
   * How far the average may go.
   *
   * @return standard deviations of the values, above 0
   */
  public double reach() {
    return limit * Math.sqrt(weight / (2 - weight));
  }

  /**
   * Values until the alarm, on average, starting from 0.
   *
   * @param shift mean of the values, standard deviations; 0 if all is as expected
   * @return average run length, 1 or more
   */
  public double averageRunLength(double shift) {
    return new RunLengthEquation(
            -reach(),
            reach(),
            (from, to) -> NORMAL.density((to - (1 - weight) * from) / weight - shift) / weight,
            from -> 0)
        .fromZero();
  }
}
