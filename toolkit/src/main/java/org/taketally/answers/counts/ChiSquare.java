package org.taketally.answers.counts;

/**
 * A chi-square statistic and its degrees of freedom.
 *
 * @param statistic 0 or more
 * @param degreesOfFreedom at least 1
 */
public record ChiSquare(double statistic, int degreesOfFreedom) {

  public ChiSquare {
    if (!(statistic >= 0) || degreesOfFreedom < 1) {
      throw new IllegalArgumentException(
          "a chi-square needs a statistic of 0 or more and at least 1 degree of freedom, got %s with %d"
              .formatted(statistic, degreesOfFreedom));
    }
  }

  /**
   * How often chance alone gives a statistic this large.
   *
   * @return 0 to 1, by the chi-square approximation
   */
  public double pValue() {
    return Quantiles.chiSquareAbove(statistic, degreesOfFreedom);
  }
}
