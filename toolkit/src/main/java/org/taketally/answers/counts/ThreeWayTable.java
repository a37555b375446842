package org.taketally.answers.counts;

import java.util.Arrays;
import java.util.List;

/**
 * Counts by three groupings, and two questions about them: do they all go their own way, and does
 * one of them bend how the other two go together?
 *
 * <p>Fitted by scaling a table of ones in turn to each of the totals the question keeps, until all
 * agree (iterative proportional fitting).
 *
 * @see "Bishop, Fienberg and Holland (1975), Discrete Multivariate Analysis, chapter 3"
 */
public final class ThreeWayTable {

  private static final double CLOSE_ENOUGH = 1e-13;
  private static final int MOST_ROUNDS = 100_000;

  private final int rows;
  private final int columns;
  private final int layers;
  private final double[] counts;

  /** Which groupings a set of totals keeps apart. */
  private record Totals(boolean byRow, boolean byColumn, boolean byLayer) {}

  private static final List<Totals> SINGLES =
      List.of(
          new Totals(true, false, false),
          new Totals(false, true, false),
          new Totals(false, false, true));
  private static final List<Totals> PAIRS =
      List.of(
          new Totals(true, true, false),
          new Totals(true, false, true),
          new Totals(false, true, true));

  /**
   * What a fit gave.
   *
   * @param expected expected counts by row, column and layer
   * @param pearson sum (o - e)^2 / e
   * @param likelihoodRatio 2 sum o log(o / e)
   */
  public record Fit(double[][][] expected, ChiSquare pearson, ChiSquare likelihoodRatio) {}

  private ThreeWayTable(long[][][] table) {
    rows = table.length;
    columns = table[0].length;
    layers = table[0][0].length;
    counts =
        Arrays.stream(table)
            .flatMap(Arrays::stream)
            .flatMapToLong(Arrays::stream)
            .asDoubleStream()
            .toArray();
  }

  /**
   * A table of counts.
   *
   * @param counts by row, column and layer, at least two of each; each pair of levels must occur
   * @return the table
   * @throws IllegalArgumentException if a pair of levels never occurs, or there are fewer levels
   */
  public static ThreeWayTable of(long[][][] counts) {
    ThreeWayTable table = new ThreeWayTable(counts);
    if (table.rows < 2 || table.columns < 2 || table.layers < 2) {
      throw new IllegalArgumentException("a three-way table needs two levels of each grouping");
    }
    for (Totals pair : PAIRS) {
      boolean[] seen = new boolean[table.counts.length];
      boolean[] used = new boolean[table.counts.length];
      for (int cell = 0; cell < table.counts.length; cell++) {
        used[table.place(pair, cell)] = true;
        seen[table.place(pair, cell)] |= table.counts[cell] > 0;
      }
      if (!Arrays.equals(seen, used)) {
        throw new IllegalArgumentException(
            "each pair of levels must occur at least once; leave out levels that don't");
      }
    }
    return table;
  }

  /**
   * All three groupings independent of each other.
   *
   * @return the fit, rows * columns * layers - rows - columns - layers + 2 degrees of freedom
   */
  public Fit mutualIndependence() {
    return fit(SINGLES, counts.length - rows - columns - layers + 2);
  }

  /**
   * Any two groupings may go together, but the same way at each level of the third.
   *
   * @return the fit, (rows - 1)(columns - 1)(layers - 1) degrees of freedom
   * @throws ArithmeticException if the scaling does not settle
   */
  public Fit noThreeWay() {
    return fit(PAIRS, (rows - 1) * (columns - 1) * (layers - 1));
  }

  private Fit fit(List<Totals> kept, int degreesOfFreedom) {
    double[] expected = new double[counts.length];
    Arrays.fill(expected, 1);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double change = 0;
      for (Totals totals : kept) {
        change = Math.max(change, scale(expected, totals));
      }
      if (change < CLOSE_ENOUGH) {
        return fit(expected, degreesOfFreedom);
      }
    }
    throw new ArithmeticException(
        "scaling the table to its totals did not settle in %d rounds; counts of 0 may be too many"
            .formatted(MOST_ROUNDS));
  }

  /** Scales to one set of totals; returns the largest relative change. */
  private double scale(double[] expected, Totals totals) {
    double[] wanted = sums(counts, totals);
    double[] found = sums(expected, totals);
    double change = 0;
    for (int cell = 0; cell < expected.length; cell++) {
      double factor = wanted[place(totals, cell)] / found[place(totals, cell)];
      expected[cell] *= factor;
      change = Math.max(change, Math.abs(factor - 1));
    }
    return change;
  }

  private double[] sums(double[] table, Totals totals) {
    double[] sums = new double[table.length];
    for (int cell = 0; cell < table.length; cell++) {
      sums[place(totals, cell)] += table[cell];
    }
    return sums;
  }

  /** The total a cell belongs to, named by that total's first cell. */
  private int place(Totals totals, int cell) {
    int layer = totals.byLayer ? cell % layers : 0;
    int column = totals.byColumn ? cell / layers % columns : 0;
    int row = totals.byRow ? cell / layers / columns : 0;
    return (row * columns + column) * layers + layer;
  }

  private Fit fit(double[] expected, int degreesOfFreedom) {
    double pearson = 0;
    double likelihoodRatio = 0;
    double[][][] shaped = new double[rows][columns][layers];
    for (int cell = 0; cell < counts.length; cell++) {
      double o = counts[cell];
      double e = expected[cell];
      pearson += (o - e) * (o - e) / e;
      likelihoodRatio += o == 0 ? 0 : 2 * o * Math.log(o / e);
      shaped[cell / layers / columns][cell / layers % columns][cell % layers] = e;
    }
    return new Fit(
        shaped,
        new ChiSquare(pearson, degreesOfFreedom),
        new ChiSquare(Math.max(0, likelihoodRatio), degreesOfFreedom));
  }
}
