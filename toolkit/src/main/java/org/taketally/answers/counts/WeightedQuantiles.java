package org.taketally.answers.counts;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.taketally.cells.Cells;
import org.taketally.terms.SampleQuantiles;

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
    double[] sorted = grafts.keySet().stream().mapToDouble(value -> value).toArray();
    long[] upTo = grafts.values().stream().mapToLong(count -> count).toArray();
    Arrays.parallelPrefix(upTo, Long::sum);
    return Arrays.stream(shares)
        .map(share -> SampleQuantiles.occurring(sorted, upTo, share))
        .toArray();
  }

  /** One of {@link #weightedQuantiles}. */
  public static double weightedQuantile(Cells cells, String column, double share) {
    return weightedQuantiles(cells, column, share)[0];
  }

  /** There are far fewer values than cells, so cells are counted before anything is sorted. */
  private static Map<Double, Long> graftsByValue(Cells cells, String column) {
    double[] values = cells.measure(column).values();
    Map<Double, Long> grafts = new HashMap<>();
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        grafts.merge(values[i], (long) cells.grafts(i), Long::sum);
      }
    }
    return grafts;
  }

  /** Number of distinct recorded values. */
  public static int distinct(Cells cells, String column) {
    return graftsByValue(cells, column).size();
  }
}
