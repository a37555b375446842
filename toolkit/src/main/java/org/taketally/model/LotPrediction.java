package org.taketally.model;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.taketally.terms.Interval;
import org.taketally.terms.SampleQuantiles;

/**
 * What a lot not yet made is likely to do, with everything in it that is uncertain: effects,
 * spreads, levels never seen, and the luck of so many grafts.
 */
public final class LotPrediction {

  /** Take of the lot in each draw, in the order of the draws. */
  private final double[] inOrder;

  private final double[] takes;

  LotPrediction(double[] takes) {
    this.inOrder = takes.clone();
    this.takes = takes.clone();
    Arrays.sort(this.takes);
  }

  /**
   * Expected take.
   *
   * @return 0 to 1
   */
  public double take() {
    return Arrays.stream(takes).average().orElseThrow();
  }

  /**
   * Likely range of the take of a lot so large that its own luck doesn't count.
   *
   * @param coverage strictly between 0 and 1
   * @return within 0 to 1
   */
  public Interval take(double coverage) {
    requireCoverage(coverage);
    return new Interval(
        SampleQuantiles.of(takes, (1 - coverage) / 2),
        SampleQuantiles.of(takes, (1 + coverage) / 2),
        coverage);
  }

  /**
   * Likely range of how many of some grafts take: "of 10 grafts, 3 to 8 taking is nothing unusual".
   *
   * @param grafts at least 1
   * @param coverage strictly between 0 and 1; the range holds at least as much
   * @return whole numbers from 0 to {@code grafts}
   */
  public Interval count(int grafts, double coverage) {
    requireCoverage(coverage);
    double tail = (1 - coverage) / 2;
    double[] chances = counts(grafts);
    int low = 0;
    double below = chances[0];
    while (low < grafts && below <= tail) {
      below += chances[++low];
    }
    int high = grafts;
    double above = chances[grafts];
    while (high > 0 && above <= tail) {
      above += chances[--high];
    }
    return new Interval(Math.min(low, high), Math.max(low, high), coverage);
  }

  /**
   * How likely each count of takes is.
   *
   * @param grafts at least 1
   * @return probabilities of 0 to {@code grafts} takes
   */
  public double[] counts(int grafts) {
    if (grafts < 1) {
      throw new IllegalArgumentException("grafts must be 1 or more, got " + grafts);
    }
    double[] chances = new double[grafts + 1];
    for (double take : takes) {
      BinomialDistribution counts = BinomialDistribution.of(grafts, take);
      for (int k = 0; k <= grafts; k++) {
        chances[k] += counts.probability(k) / takes.length;
      }
    }
    return chances;
  }

  /**
   * How likely at least so many of some grafts take.
   *
   * @param takesWanted 0 to {@code grafts}
   * @param grafts at least 1
   * @return probability, 0 to 1
   */
  public double probabilityOfAtLeast(int takesWanted, int grafts) {
    double[] chances = counts(grafts);
    double sum = 0;
    for (int k = Math.max(0, takesWanted); k <= grafts; k++) {
      sum += chances[k];
    }
    return Math.min(1, sum);
  }

  /**
   * The take of the lot in each draw, in the order of the draws: lots predicted by the same draws
   * can be added up draw by draw.
   *
   * @return one a draw, 0 to 1
   */
  public double[] draws() {
    return inOrder.clone();
  }

  private static void requireCoverage(double coverage) {
    if (!(coverage > 0 && coverage < 1)) {
      throw new IllegalArgumentException("coverage must lie between 0 and 1, got " + coverage);
    }
  }
}
