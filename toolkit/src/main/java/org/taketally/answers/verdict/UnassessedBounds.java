package org.taketally.answers.verdict;

import java.util.Arrays;
import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.terms.Interval;

/**
 * How far a difference would move if the grafts that weren't assessed had all failed, or all taken
 * (bounds without an assumption: Manski 1990, American Economic Review 80(2), 319-323).
 *
 * <pre>
 *   u      share of a level's grafts that wasn't assessed, p its take among those assessed
 *   all failed: p (1 - u),   all taken: p (1 - u) + u
 * </pre>
 *
 * @param shares share not assessed of each level, 0 to 1
 */
record UnassessedBounds(double[] shares) {

  static UnassessedBounds of(Cells cells, String factor, List<String> levels, long[] assessed) {
    double[] shares = new double[assessed.length];
    Arrays.setAll(
        shares,
        l -> {
          double lost = cells.unassessed(factor, levels.get(l));
          return lost == 0 ? 0 : lost / (lost + assessed[l]);
        });
    return new UnassessedBounds(shares);
  }

  static UnassessedBounds none(int levels) {
    return new UnassessedBounds(new double[levels]);
  }

  /** A range of take of one level less take of another, widened by what isn't known. */
  Interval widened(Interval range, double[] takes, int one, int other) {
    double[] weights = new double[shares.length];
    weights[one] = 1;
    weights[other] = -1;
    return widened(range, takes, weights);
  }

  /** A range of a weighted sum of takes, widened by what isn't known. */
  Interval widened(Interval range, double[] takes, double[] weights) {
    double failed = 0;
    double taken = 0;
    for (int l = 0; l < weights.length; l++) {
      failed -= weights[l] * takes[l] * shares[l];
      taken += weights[l] * (1 - takes[l]) * shares[l];
    }
    return new Interval(
        Math.max(-1, range.low() + Math.min(0, Math.min(failed, taken))),
        Math.min(1, range.high() + Math.max(0, Math.max(failed, taken))),
        range.coverage());
  }

  /** Largest move of any difference, 0 to 1. */
  double largest(double[] takes) {
    double largest = 0;
    for (int a = 0; a < shares.length; a++) {
      for (int b = 0; b < a; b++) {
        Interval moved = widened(new Interval(0, 0, VerdictRules.AT_ONCE), takes, a, b);
        largest = Math.max(largest, moved.high() - moved.low());
      }
    }
    return largest;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof UnassessedBounds that && Arrays.equals(shares, that.shares);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(shares);
  }

  @Override
  public String toString() {
    return "unassessed " + Arrays.toString(shares);
  }
}
