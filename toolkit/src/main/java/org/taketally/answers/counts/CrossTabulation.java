package org.taketally.answers.counts;

import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/** Grafts by the levels of two factors: who met whom. */
public final class CrossTabulation {

  private final long[][] grafts;
  private final long[] rows;
  private final long[] columns;
  private final long total;

  public CrossTabulation(Cells cells, Factor factor, Factor other) {
    grafts = new long[factor.size()][other.size()];
    rows = new long[factor.size()];
    columns = new long[other.size()];
    long sum = 0;
    for (int i = 0; i < cells.size(); i++) {
      int row = factor.code(i);
      int column = other.code(i);
      if (row != Factor.MISSING && column != Factor.MISSING) {
        int count = cells.grafts(i);
        grafts[row][column] += count;
        rows[row] += count;
        columns[column] += count;
        sum += count;
      }
    }
    total = sum;
  }

  public long grafts(int level) {
    return rows[level];
  }

  long total() {
    return total;
  }

  /** Share of the information about this level against all others left within the other factor. */
  public double efficiency(int level) {
    double within = 0;
    for (int j = 0; j < columns.length; j++) {
      if (columns[j] > 0) {
        within += (double) grafts[level][j] * (columns[j] - grafts[level][j]) / columns[j];
      }
    }
    double before = (double) rows[level] * (total - rows[level]) / total;
    return before == 0 ? 0 : within / before;
  }

  /** The other factor's level that holds most of this level's grafts. */
  public int mainPartner(int level) {
    int best = 0;
    for (int j = 1; j < columns.length; j++) {
      if (grafts[level][j] > grafts[level][best]) {
        best = j;
      }
    }
    return best;
  }

  /** Share of this level's grafts that lie with a partner. */
  public double shareOfLevel(int level, int partner) {
    return (double) grafts[level][partner] / rows[level];
  }

  /** Share of the partner's grafts that are of this level. */
  public double shareOfPartner(int level, int partner) {
    return (double) grafts[level][partner] / columns[partner];
  }

  /** How many of the other factor's levels this one met. */
  public int partners(int level) {
    int count = 0;
    for (long met : grafts[level]) {
      count += met > 0 ? 1 : 0;
    }
    return count;
  }

  /** Levels linked by shared partners, directly or over others; levels without grafts left out. */
  public List<List<Integer>> groups() {
    int[] root = IntStream.range(0, rows.length).toArray();
    for (int j = 0; j < columns.length; j++) {
      int first = -1;
      for (int i = 0; i < rows.length; i++) {
        if (grafts[i][j] > 0 && first < 0) {
          first = i;
        } else if (grafts[i][j] > 0 && root[i] != root[first]) {
          int from = root[i];
          int to = root[first];
          Arrays.setAll(root, k -> root[k] == from ? to : root[k]);
        }
      }
    }
    return IntStream.range(0, rows.length)
        .boxed()
        .filter(i -> rows[i] > 0)
        .collect(Collectors.groupingBy(i -> root[i], TreeMap::new, Collectors.toList()))
        .values()
        .stream()
        .toList();
  }

  public int levelsSeen() {
    int count = 0;
    for (long row : rows) {
      count += row > 0 ? 1 : 0;
    }
    return count;
  }

  /** Pairs of levels that have grafts. */
  public int pairsSeen() {
    int count = 0;
    for (int i = 0; i < rows.length; i++) {
      count += partners(i);
    }
    return count;
  }

  public int partnersSeen() {
    int count = 0;
    for (long column : columns) {
      count += column > 0 ? 1 : 0;
    }
    return count;
  }
}
