package org.taketally.terms;

import java.util.Arrays;

/**
 * Quantiles of counted values: of draws, or of numbers each of which several grafts share.
 *
 * @see "Hyndman and Fan (1996), The American Statistician 50, 361-365; the types are theirs"
 */
public final class SampleQuantiles {

  private SampleQuantiles() {}

  /**
   * Between two neighbours, straight (type 7).
   *
   * @param sorted ascending, at least one
   * @param share 0 the smallest to 1 the largest
   * @return a value from the smallest to the largest
   */
  public static double of(double[] sorted, double share) {
    return between(sorted, share * (sorted.length - 1));
  }

  /**
   * The same where each value counts for the middle of its step (type 5).
   *
   * @param sorted ascending, at least one
   * @param share 0 to 1
   * @return a value from the smallest to the largest
   */
  public static double ofSteps(double[] sorted, double share) {
    double place = share * sorted.length - 0.5;
    return between(sorted, Math.min(sorted.length - 1, Math.max(0, place)));
  }

  private static double between(double[] sorted, double place) {
    int below = (int) place;
    int above = Math.min(below + 1, sorted.length - 1);
    return line(sorted[below], sorted[above], place - below);
  }

  /**
   * Of values that count several times each (type 7).
   *
   * @param sorted ascending, at least one
   * @param upTo how many there are up to and with each, ascending, the first at least 1
   * @param share 0 the smallest to 1 the largest
   * @return a value from the smallest to the largest
   */
  public static double of(double[] sorted, long[] upTo, double share) {
    double place = (upTo[upTo.length - 1] - 1) * share;
    long below = (long) Math.floor(place);
    double low = nth(sorted, upTo, below);
    double high = nth(sorted, upTo, Math.min(below + 1, upTo[upTo.length - 1] - 1));
    return line(low, high, place - below);
  }

  /**
   * The smallest value that at least a share is at or below (type 1): one that occurs.
   *
   * @param sorted ascending, at least one
   * @param upTo how many there are up to and with each, ascending
   * @param share 0 the smallest to 1 the largest
   * @return one of the values
   */
  public static double occurring(double[] sorted, long[] upTo, double share) {
    double wanted = share * upTo[upTo.length - 1];
    int i = 0;
    while (i < upTo.length - 1 && !(upTo[i] >= wanted)) {
      i++;
    }
    return sorted[i];
  }

  private static double line(double low, double high, double part) {
    return low + part * (high - low);
  }

  private static double nth(double[] sorted, long[] upTo, long rank) {
    int at = Arrays.binarySearch(upTo, rank + 1);
    return sorted[at < 0 ? -at - 1 : at];
  }
}
