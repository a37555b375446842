package org.taketally.answers.verdict;

import java.util.stream.IntStream;

/**
 * The largest set of levels every two of which were shown equivalent: a maximum clique, found
 * exactly. Of sets equally large, the one that holds most grafts.
 */
final class EquivalentSet {

  private static final int MOST_LEVELS = Long.SIZE - 1;

  private final long[] equalTo;
  private final long[] grafts;
  private long best;

  private EquivalentSet(boolean[][] equivalent, long[] grafts) {
    this.grafts = grafts;
    this.equalTo = new long[grafts.length];
    for (int a = 0; a < equalTo.length; a++) {
      for (int b = 0; b < equalTo.length; b++) {
        equalTo[a] |= a != b && equivalent[a][b] ? 1L << b : 0;
      }
    }
  }

  /**
   * Finds the set.
   *
   * @param equivalent whether two levels were shown equivalent; symmetric
   * @param grafts of each level
   * @return places of its levels, in order; empty if no two are, or above 63 levels
   */
  static int[] largest(boolean[][] equivalent, long[] grafts) {
    if (grafts.length > MOST_LEVELS) {
      return new int[0];
    }
    EquivalentSet search = new EquivalentSet(equivalent, grafts);
    search.extend(0, (1L << grafts.length) - 1);
    return Long.bitCount(search.best) < 2
        ? new int[0]
        : IntStream.range(0, grafts.length).filter(k -> ((search.best >> k) & 1) == 1).toArray();
  }

  private void extend(long chosen, long candidates) {
    if (candidates == 0) {
      if (isBetter(chosen)) {
        best = chosen;
      }
      return;
    }
    if (Long.bitCount(chosen) + Long.bitCount(candidates) < Long.bitCount(best)) {
      return;
    }
    int next = Long.numberOfTrailingZeros(candidates);
    long others = candidates & ~(1L << next);
    extend(chosen | (1L << next), others & equalTo[next]);
    if ((others & ~equalTo[next]) != 0) {
      extend(chosen, others);
    }
  }

  private boolean isBetter(long set) {
    int more = Long.bitCount(set) - Long.bitCount(best);
    return more > 0 || (more == 0 && grafts(set) > grafts(best));
  }

  private long grafts(long set) {
    return IntStream.range(0, grafts.length)
        .filter(k -> ((set >> k) & 1) == 1)
        .mapToLong(k -> grafts[k])
        .sum();
  }
}
