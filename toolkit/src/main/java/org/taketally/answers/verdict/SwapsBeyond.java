package org.taketally.answers.verdict;

import java.util.Optional;

/** In how many draws swapping two levels moves each cultivar by more than the margin. */
final class SwapsBeyond {

  private final int cultivars;
  private final double[][] takes;

  /** One row for each ordered pair of levels, the first taking more; one count a cultivar. */
  private final int[][] beyond;

  /**
   * The pair whose surest cultivar each way is surest.
   *
   * @param level place of the one level
   * @param other place of the other
   * @param more place of the cultivar on which the first takes more most surely
   * @param less place of the one on which it takes less
   */
  record Surest(int level, int other, int more, int less) {}

  SwapsBeyond(int cultivars, int levels) {
    this.cultivars = cultivars;
    this.takes = new double[levels][cultivars];
    this.beyond = new int[levels * levels][cultivars];
  }

  /**
   * Counts a draw.
   *
   * @param draw one row a cultivar, one take a level
   * @param margin 0 to 1
   * @return whether some two levels are beyond the margin in both directions
   */
  boolean add(double[][] draw, double margin) {
    for (int c = 0; c < cultivars; c++) {
      for (int l = 0; l < takes.length; l++) {
        takes[l][c] = draw[c][l];
      }
    }
    boolean bothWays = false;
    for (int a = 0; a < takes.length; a++) {
      for (int b = 0; b < a; b++) {
        boolean more = count(a, b, margin);
        boolean less = count(b, a, margin);
        bothWays |= more && less;
      }
    }
    return bothWays;
  }

  private boolean count(int a, int b, double margin) {
    double[] own = takes[a];
    double[] others = takes[b];
    int[] counts = beyond[place(a, b)];
    boolean any = false;
    for (int c = 0; c < cultivars; c++) {
      if (own[c] - others[c] > margin) {
        counts[c]++;
        any = true;
      }
    }
    return any;
  }

  private int place(int a, int b) {
    return a * takes.length + b;
  }

  /** Empty where there is one level only. */
  Optional<Surest> surest() {
    Surest best = null;
    int surest = -1;
    for (int a = 0; a < takes.length; a++) {
      for (int b = 0; b < a; b++) {
        int[] more = beyond[place(a, b)];
        int[] less = beyond[place(b, a)];
        int moreSurely = largest(more);
        int lessSurely = largest(less);
        int sure = Math.min(more[moreSurely], less[lessSurely]);
        if (sure > surest) {
          surest = sure;
          best = new Surest(a, b, moreSurely, lessSurely);
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private static int largest(int[] counts) {
    int best = 0;
    for (int c = 1; c < counts.length; c++) {
      best = counts[c] > counts[best] ? c : best;
    }
    return best;
  }
}
