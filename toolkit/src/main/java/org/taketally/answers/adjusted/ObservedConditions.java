package org.taketally.answers.adjusted;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.model.FixedEffect;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;

/**
 * The conditions of the records that takes are averaged over: all cells, weighted by their grafts,
 * or, where there are more than {@value #MOST_CELLS}, as many grafts drawn evenly from them in
 * order.
 *
 * <pre>
 *   x      each fixed column, one value a cell      codes   its level of each varying column
 *   eta    logit of take of a cell in a draw
 * </pre>
 */
final class ObservedConditions {

  static final int MOST_CELLS = 10_000;

  private final TakeFit fit;
  private final List<FixedEffect> fixed;
  private final int[] cells;
  private final double[] weights;
  private final double[][] x;
  private final int[][] codes;

  ObservedConditions(TakeFit fit) {
    this.fit = fit;
    this.fixed = fit.fixed();
    this.cells = chosen(fit.cells());
    this.weights = weights(fit.cells(), cells);
    this.x = columns();
    this.codes = fit.varying().stream().map(f -> picked(f.factor())).toArray(int[][]::new);
  }

  private static int[] chosen(Cells cells) {
    if (cells.size() <= MOST_CELLS) {
      return IntStream.range(0, cells.size()).toArray();
    }
    double step = (double) cells.graftsTotal() / MOST_CELLS;
    int[] chosen = new int[MOST_CELLS];
    long upTo = cells.grafts(0);
    int cell = 0;
    for (int k = 0; k < MOST_CELLS; k++) {
      while (upTo <= (k + 0.5) * step) {
        cell++;
        upTo += cells.grafts(cell);
      }
      chosen[k] = cell;
    }
    return chosen;
  }

  private static double[] weights(Cells cells, int[] chosen) {
    double[] weights = new double[chosen.length];
    if (chosen.length < cells.size()) {
      Arrays.fill(weights, 1.0 / chosen.length);
    } else {
      double total = cells.graftsTotal();
      Arrays.setAll(weights, i -> cells.grafts(i) / total);
    }
    return weights;
  }

  private double[][] columns() {
    double[][] columns = new double[fit.beta().length][];
    for (int j = 0; j < columns.length; j++) {
      double[] unit = new double[columns.length];
      unit[j] = 1;
      double[] all = fit.design().fixedPart(unit);
      columns[j] = Arrays.stream(cells).mapToDouble(cell -> all[cell]).toArray();
    }
    return columns;
  }

  private int[] picked(String varyingColumn) {
    int[] all = fit.design().codes(varyingColumn);
    return Arrays.stream(cells).map(cell -> all[cell]).toArray();
  }

  int size() {
    return cells.length;
  }

  /** The cells they are. */
  IntStream cells() {
    return Arrays.stream(cells);
  }

  double[] weights() {
    return weights;
  }

  /** Level of a varying column each condition has. */
  int[] codes(String varyingColumn) {
    return codes[place(varyingColumn)];
  }

  private int place(String varyingColumn) {
    List<String> columns = fit.varying().stream().map(VaryingFactor::factor).toList();
    return columns.indexOf(varyingColumn);
  }

  /** Logit of take of each condition in a draw; single precision is plenty for means. */
  float[] eta(TakeDraws draws, int d) {
    double[] beta = draws.beta(d);
    List<VaryingFactor> varying = fit.varying();
    double[][] effects = new double[codes.length][];
    for (int f = 0; f < effects.length; f++) {
      effects[f] = draws.effects(varying.get(f).factor(), d);
    }
    double[] sums = new double[cells.length];
    for (int j = 0; j < beta.length; j++) {
      add(sums, beta[j], x[j]);
    }
    float[] eta = new float[cells.length];
    for (int i = 0; i < eta.length; i++) {
      double sum = sums[i];
      for (int f = 0; f < effects.length; f++) {
        sum += effects[f][codes[f][i]];
      }
      eta[i] = (float) sum;
    }
    return eta;
  }

  /** Takes what an adjusted column adds out of the logit of each condition. */
  void takeOut(String adjustedColumn, double[] beta, double[] logits) {
    for (int j = 0; j < beta.length; j++) {
      if (fixed.get(j).term().equals(adjustedColumn)) {
        add(logits, -beta[j], x[j]);
      }
    }
  }

  private static void add(double[] sums, double factor, double[] values) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += factor * values[i];
    }
  }
}
