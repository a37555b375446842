package org.taketally.watch.chart;

/**
 * What one graft adds to a risk-adjusted CUSUM: the log likelihood ratio of its result if the odds
 * of failing were {@code oddsRatio} times those expected.
 *
 * <pre>
 *   p   expected chance of failing      R   odds ratio
 *   took:   log(1 / (1 - p + R p))      failed: log(R / (1 - p + R p))
 * </pre>
 *
 * @param oddsRatio odds of failing against those expected, above 0: above 1 watches for worse,
 *     below 1 for better
 * @see <a href="https://doi.org/10.1093/biostatistics/1.4.441">Steiner, Cook, Farewell and Treasure
 *     (2000)</a>
 */
public record CusumWeight(double oddsRatio) {

  public CusumWeight {
    if (!(oddsRatio > 0 && oddsRatio < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "the odds ratio to watch for must be above 0, e.g. 2, got " + oddsRatio);
    }
  }

  /**
   * Weight of a graft that took.
   *
   * @param expectedTake chance of taking expected, 0 to 1
   * @return below 0 when watching for worse
   */
  public double ofTake(double expectedTake) {
    return -log(expectedTake);
  }

  /**
   * Weight of a graft that failed.
   *
   * @param expectedTake chance of taking expected, 0 to 1
   * @return above 0 when watching for worse
   */
  public double ofFailure(double expectedTake) {
    return Math.log(oddsRatio) - log(expectedTake);
  }

  private double log(double expectedTake) {
    if (!(expectedTake >= 0 && expectedTake <= 1)) {
      throw new IllegalArgumentException(
          "an expected take must lie within 0 to 1, got " + expectedTake);
    }
    return Math.log1p((oddsRatio - 1) * (1 - expectedTake));
  }
}
