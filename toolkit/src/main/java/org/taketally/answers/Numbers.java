package org.taketally.answers;

import java.util.stream.IntStream;
import org.taketally.cells.Cells;

/** Columns of numbers, each cell weighing as many grafts as it holds. */
final class Numbers {

  private Numbers() {}

  /**
   * A quantile over the grafts.
   *
   * @param cells the records
   * @param column a column of numbers; values not recorded are left out
   * @param share 0 the smallest to 1 the largest
   * @return smallest value with at least that share of the grafts at or below it
   */
  static double weightedQuantile(Cells cells, String column, double share) {
    double[] values = cells.measure(column).values();
    int[] order =
        IntStream.range(0, values.length)
            .filter(i -> !Double.isNaN(values[i]))
            .boxed()
            .sorted((a, b) -> Double.compare(values[a], values[b]))
            .mapToInt(i -> i)
            .toArray();
    double total = 0;
    for (int i : order) {
      total += cells.grafts()[i];
    }
    double sum = 0;
    for (int i : order) {
      sum += cells.grafts()[i];
      if (sum >= share * total) {
        return values[i];
      }
    }
    throw new IllegalArgumentException("no graft has a value in column " + column);
  }

  /** Number of distinct recorded values. */
  static int distinct(Cells cells, String column) {
    return (int)
        java.util.Arrays.stream(cells.measure(column).values())
            .filter(value -> !Double.isNaN(value))
            .distinct()
            .count();
  }
}
