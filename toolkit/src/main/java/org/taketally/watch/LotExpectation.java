package org.taketally.watch;

import java.util.Arrays;

/**
 * What was to be expected of a lot before it was counted.
 *
 * @param takes take in each season that may be, all equally likely; the same place means the same
 *     season in every lot, so that what is uncertain of a whole season moves all its lots together
 * @param correlation of two grafts of the lot beyond that, 0 or more and below 1
 */
public record LotExpectation(double[] takes, double correlation) {

  public LotExpectation {
    takes = takes.clone();
    if (takes.length == 0 || Arrays.stream(takes).anyMatch(p -> !(p > 0 && p < 1))) {
      throw new IllegalArgumentException(
          "expected takes must lie between 0 and 1, at least one, got " + Arrays.toString(takes));
    }
    if (!(correlation >= 0 && correlation < 1)) {
      throw new IllegalArgumentException(
          "the correlation of grafts of a lot must be 0 or more and below 1, got " + correlation);
    }
  }

  @Override
  public double[] takes() {
    return takes.clone();
  }

  /**
   * Seasons that may be.
   *
   * @return 1 or more
   */
  public int seasons() {
    return takes.length;
  }

  /**
   * The take expected on average.
   *
   * @return above 0 and below 1
   */
  public double mean() {
    return Arrays.stream(takes).average().orElseThrow();
  }

  /**
   * Chance of each number of takes in one of the seasons that may be.
   *
   * @param season 0 to {@link #seasons()} - 1
   * @param grafts grafts of the lot
   * @return chances of 0 to {@code grafts} takes
   */
  double[] chances(int season, int grafts) {
    return LotCounts.chances(grafts, takes[season], correlation);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LotExpectation that
        && Arrays.equals(takes, that.takes)
        && correlation == that.correlation;
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(takes) + Double.hashCode(correlation);
  }

  @Override
  public String toString() {
    return "LotExpectation[mean %s, %d seasons, correlation %s]"
        .formatted(mean(), takes.length, correlation);
  }
}
