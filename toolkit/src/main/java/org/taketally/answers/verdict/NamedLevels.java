package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.List;

/**
 * Which levels to name where some pairs were shown to differ: the fewest that account for every
 * such pair, the level in most pairs first; of equals, the one that takes less.
 */
final class NamedLevels {

  private final boolean[][] above;

  private NamedLevels(boolean[][] above) {
    this.above = new boolean[above.length][];
    for (int a = 0; a < above.length; a++) {
      this.above[a] = above[a].clone();
    }
  }

  /**
   * Names levels.
   *
   * @param above whether the first level was shown to take more than the second
   * @return places of the levels, the one that accounts for most pairs first; empty if there are no
   *     such pairs
   */
  static List<Integer> of(boolean[][] above) {
    NamedLevels left = new NamedLevels(above);
    List<Integer> named = new ArrayList<>();
    for (int next = left.busiest(); next >= 0; next = left.busiest()) {
      named.add(next);
      left.clear(next);
    }
    return named;
  }

  private int busiest() {
    int best = -1;
    for (int k = 0; k < above.length; k++) {
      if (pairs(k) > 0
          && (best < 0
              || pairs(k) > pairs(best)
              || (pairs(k) == pairs(best) && below(k) > below(best)))) {
        best = k;
      }
    }
    return best;
  }

  private int pairs(int k) {
    int count = below(k);
    for (boolean pair : above[k]) {
      count += pair ? 1 : 0;
    }
    return count;
  }

  private int below(int k) {
    int count = 0;
    for (boolean[] row : above) {
      count += row[k] ? 1 : 0;
    }
    return count;
  }

  private void clear(int k) {
    for (int other = 0; other < above.length; other++) {
      above[k][other] = false;
      above[other][k] = false;
    }
  }
}
