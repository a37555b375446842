package org.taketally.answers.verdict;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.taketally.answers.adjusted.DrawSummary;

/**
 * Which levels make a factor matter: those that surely lie over half the margin below, or above,
 * the middle of the others. Of two levels, only the lower one is named.
 */
final class OutlyingLevels {

  /** Chance needed that a level lies so far out. */
  private static final double SURE = 0.975;

  private OutlyingLevels() {}

  static boolean[] of(double[][] takes, double margin) {
    int count = takes[0].length;
    boolean[] out = new boolean[count];
    for (int l = 0; l < count; l++) {
      int place = l;
      double[] away =
          Arrays.stream(takes).mapToDouble(row -> row[place] - middle(row, place)).toArray();
      out[l] =
          DrawSummary.chance(away, x -> x < -margin / 2) >= SURE
              || (count > 2 && DrawSummary.chance(away, x -> x > margin / 2) >= SURE);
    }
    return out;
  }

  private static double middle(double[] row, int left) {
    double[] others =
        IntStream.range(0, row.length)
            .filter(l -> l != left)
            .mapToDouble(l -> row[l])
            .sorted()
            .toArray();
    int half = others.length / 2;
    return others.length % 2 == 1 ? others[half] : (others[half - 1] + others[half]) / 2;
  }
}
