package org.taketally.answers.counts;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.taketally.cells.Cells;

/** Columns of numbers, each cell weighing as many grafts as it holds. */
public final class WeightedQuantiles {

  private WeightedQuantiles() {}

  /**
   * Quantiles over the grafts.
   *
   * @param cells the records
   * @param column a column of numbers; values not recorded are left out
   * @param shares 0 the smallest to 1 the largest
   * @return for each share the smallest value with at least that share of the grafts at or below it
   */
  public static double[] weightedQuantiles(Cells cells, String column, double... shares) {
    SortedMap<Double, Long> grafts = new TreeMap<>(graftsByValue(cells, column));
    if (grafts.isEmpty()) {
      throw new IllegalArgumentException("no graft has a value in column " + column);
    }
    long total = grafts.values().stream().mapToLong(count -> count).sum();
    return Arrays.stream(shares).map(share -> quantile(grafts, share * total)).toArray();
  }

  /** One of {@link #weightedQuantiles}. */
  public static double weightedQuantile(Cells cells, String column, double share) {
    return weightedQuantiles(cells, column, share)[0];
  }

  private static double quantile(SortedMap<Double, Long> grafts, double wanted) {
    long sum = 0;
    for (Map.Entry<Double, Long> value : grafts.entrySet()) {
      sum += value.getValue();
      if (sum >= wanted) {
        return value.getKey();
      }
    }
    return grafts.lastKey();
  }

  /** There are far fewer values than cells, so cells are counted before anything is sorted. */
  private static Map<Double, Long> graftsByValue(Cells cells, String column) {
    double[] values = cells.measure(column).values();
    Map<Double, Long> grafts = new HashMap<>();
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        grafts.merge(values[i], (long) cells.grafts()[i], Long::sum);
      }
    }
    return grafts;
  }

  /** Number of distinct recorded values. */
  public static int distinct(Cells cells, String column) {
    return graftsByValue(cells, column).size();
  }
}
