package org.taketally.watch.chart;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * CUSUM of standardised values: s = max(0, s + x - k), alarm above h.
 *
 * @param referenceValue k, half the shift in standard deviations that should be found fast, 0 or
 *     more, e.g. 0.5
 * @param limit h, standard deviations, above 0, e.g. 4
 * @see "Page (1954), Biometrika 41, 100-115"
 */
public record NormalCusum(double referenceValue, double limit) {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  public NormalCusum {
    if (!(referenceValue >= 0 && referenceValue < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "the reference value must be 0 or more, e.g. 0.5, got " + referenceValue);
    }
    ChartLimits.require(limit);
  }

  /**
   * Values until the alarm, on average, starting from 0 and watching for a rise.
   *
   * @param shift mean of the values, standard deviations; 0 if all is as expected
   * @return average run length, 1 or more
   */
  public double averageRunLength(double shift) {
    return new RunLengthEquation(
            0,
            limit,
            (from, to) -> NORMAL.density(to - from - shift + referenceValue),
            from -> NORMAL.cumulativeProbability(referenceValue - from - shift))
        .fromZero();
  }

  /**
   * The same when a second CUSUM watches for a fall with the same settings: 1/L = 1/L(up) +
   * 1/L(down).
   *
   * @param shift mean of the values, standard deviations
   * @return average run length, 1 or more
   * @see "Kemp (1961), Journal of the Royal Statistical Society B 23, 149-153"
   */
  public double averageRunLengthTwoSided(double shift) {
    return 1 / (1 / averageRunLength(shift) + 1 / averageRunLength(-shift));
  }
}
