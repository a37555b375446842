package org.taketally.answers.confounding;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/**
 * Grafts by pairs of levels, with all blocks swept out: what is left of the levels of one factor.
 *
 * <p>The levels of the largest block never meet each other, so each is swept out by itself, over
 * the few others it met. Only the others form a table of all pairs.
 *
 * <pre>
 *   n_l, r     grafts of a level of the largest block, and by the other columns within it
 *   T - sum[r r' / n_l]   table of the others, the largest block swept out
 * </pre>
 */
final class InformationMatrix {

  /** A pivot below this share of its diagonal counts as zero: the level is a sum of others. */
  private static final double PIVOT = 1e-9;

  private final Cells cells;
  private final List<Factor> columns;
  private final int[] starts;
  private final double[][] table;

  private InformationMatrix(Cells cells, List<Factor> columns) {
    this.cells = cells;
    this.columns = columns;
    this.starts = new int[columns.size() + 1];
    for (int c = 0; c < columns.size(); c++) {
      starts[c + 1] = starts[c] + columns.get(c).size() + 1;
    }
    this.table = new double[starts[columns.size()]][starts[columns.size()]];
  }

  /**
   * C = N_aa - N_ab N_bb^- N_ba, see {@link DesignInformation}.
   *
   * @param cells the records; cells lacking the factor don't count
   * @param factor whose levels are compared
   * @param blocks what is swept out; cells lacking one share a level of their own
   * @return symmetric, one row a level of the factor, grafts
   */
  static double[][] of(Cells cells, Factor factor, List<Factor> blocks) {
    List<Factor> order =
        blocks.stream().sorted(Comparator.comparingInt((Factor f) -> -f.size())).toList();
    List<Factor> dense =
        new java.util.ArrayList<>(order.subList(Math.min(1, order.size()), order.size()));
    dense.add(factor);
    InformationMatrix swept = new InformationMatrix(cells, dense);
    double[] grafts = swept.count();
    if (!order.isEmpty()) {
      swept.sweepLargest(order.get(0));
    }
    return swept.sweepOthers(grafts, factor.size());
  }

  /** Fills the table; its diagonal as counted. */
  private double[] count() {
    int[] places = new int[columns.size()];
    for (int i = 0; i < cells.size(); i++) {
      if (places(i, places)) {
        for (int a : places) {
          for (int b : places) {
            table[a][b] += a <= b ? cells.grafts(i) : 0;
          }
        }
      }
    }
    double[] grafts = new double[table.length];
    Arrays.setAll(grafts, p -> table[p][p]);
    return grafts;
  }

  /** Where a cell's levels stand in the table, the factor last; false if it lacks the factor. */
  private boolean places(int cell, int[] places) {
    for (int c = 0; c < places.length; c++) {
      places[c] = starts[c] + placeOf(columns.get(c), cell);
    }
    return places[places.length - 1] < table.length - 1;
  }

  /** The level of a cell; those without one share a place after the last level. */
  private static int placeOf(Factor factor, int cell) {
    int code = factor.code(cell);
    return code == Factor.MISSING ? factor.size() : code;
  }

  private void sweepLargest(Factor largest) {
    int[] from = new int[largest.size() + 2];
    int[] order = sorted(largest, from);
    double[] row = new double[table.length];
    int[] met = new int[table.length];
    int[] places = new int[columns.size()];
    for (int level = 0; level <= largest.size(); level++) {
      int count = 0;
      double grafts = 0;
      for (int at = from[level]; at < from[level + 1]; at++) {
        int n = cells.grafts(order[at]);
        if (n > 0 && places(order[at], places)) {
          grafts += n;
          for (int place : places) {
            if (row[place] == 0) {
              met[count++] = place;
            }
            row[place] += n;
          }
        }
      }
      subtract(row, met, count, grafts);
    }
  }

  /** T less r r' / n over the places met, which are then cleared. */
  private void subtract(double[] row, int[] met, int count, double grafts) {
    Arrays.sort(met, 0, count);
    for (int a = 0; a < count; a++) {
      double share = row[met[a]] / grafts;
      double[] target = table[met[a]];
      for (int b = a; b < count; b++) {
        target[met[b]] -= share * row[met[b]];
      }
    }
    for (int a = 0; a < count; a++) {
      row[met[a]] = 0;
    }
  }

  /** Cells by level, those without one last; {@code from} is where each level starts. */
  private static int[] sorted(Factor factor, int[] from) {
    int size = factor.cells();
    for (int i = 0; i < size; i++) {
      from[1 + placeOf(factor, i)]++;
    }
    for (int level = 1; level < from.length; level++) {
      from[level] += from[level - 1];
    }
    int[] next = from.clone();
    int[] order = new int[size];
    for (int i = 0; i < size; i++) {
      order[next[placeOf(factor, i)]++] = i;
    }
    return order;
  }

  /** Sweeps all but the last columns out; those that are sums of others drop out. */
  private double[][] sweepOthers(double[] grafts, int levels) {
    int start = starts[columns.size() - 1];
    for (int p = 0; p < start; p++) {
      double pivot = table[p][p];
      if (!(pivot > PIVOT * grafts[p])) {
        continue;
      }
      double[] row = table[p];
      for (int i = p + 1; i < table.length; i++) {
        double share = row[i] / pivot;
        double[] target = table[i];
        for (int j = i; j < target.length && share != 0; j++) {
          target[j] -= share * row[j];
        }
      }
    }
    double[][] left = new double[levels][levels];
    for (int i = 0; i < levels; i++) {
      for (int j = 0; j < levels; j++) {
        left[i][j] = table[start + Math.min(i, j)][start + Math.max(i, j)];
      }
    }
    return left;
  }
}
