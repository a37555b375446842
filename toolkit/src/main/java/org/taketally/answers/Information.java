package org.taketally.answers;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/**
 * How much the records say about differences between the levels of one factor once others, the
 * blocks, are allowed for: weighted least squares with the grafts as weights.
 *
 * <pre>
 *   N_aa, N_ab, N_bb   grafts by level of the factor (a) and of all blocks (b)
 *   C = N_aa - N_ab N_bb^- N_ba   information about the levels, blocks allowed for
 *   variance of a difference d = d' C^- d; unlimited if d is not in the space of C
 * </pre>
 *
 * See John and Williams (1995), Cyclic and computer generated designs, chapter 2, for efficiency
 * factors of block designs.
 */
final class Information {

  /** A pivot below this share of its diagonal counts as zero: the level is a sum of others. */
  private static final double PIVOT = 1e-9;

  private final double[] grafts;
  private final double[][] inverse;
  private final double[][] loose;

  /**
   * @param cells the records
   * @param factor whose levels are compared
   * @param blocks what is allowed for; none gives efficiency 1
   */
  Information(Cells cells, Factor factor, List<Factor> blocks) {
    double[][] information = adjusted(cells, factor, blocks);
    this.grafts = levelGrafts(cells, factor);
    int k = factor.size();
    this.inverse = new double[k][k];
    EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(information));
    double[] values = eigen.getRealEigenvalues();
    double zero = 1e-9 * Math.max(Arrays.stream(grafts).max().orElse(0), 1);
    this.loose =
        java.util.stream.IntStream.range(0, k)
            .filter(i -> values[i] <= zero)
            .mapToObj(i -> eigen.getEigenvector(i).toArray())
            .toArray(double[][]::new);
    for (int i = 0; i < k; i++) {
      if (values[i] > zero) {
        addOuter(inverse, eigen.getEigenvector(i).toArray(), 1 / values[i]);
      }
    }
  }

  /** Share of the information about the difference between two levels that is left, 0 to 1. */
  double efficiency(int level, int other) {
    if (grafts[level] == 0 || grafts[other] == 0) {
      return 0;
    }
    for (double[] direction : loose) {
      if (Math.abs(direction[level] - direction[other]) > 1e-6) {
        return 0;
      }
    }
    double variance = inverse[level][level] + inverse[other][other] - 2 * inverse[level][other];
    return Math.min(1, (1 / grafts[level] + 1 / grafts[other]) / variance);
  }

  /** Share left over all pairs of levels that have grafts: mean variance before against after. */
  double efficiency() {
    double before = 0;
    double after = 0;
    for (int i = 0; i < grafts.length; i++) {
      for (int j = 0; j < i; j++) {
        if (grafts[i] > 0 && grafts[j] > 0) {
          double variance = 1 / grafts[i] + 1 / grafts[j];
          before += variance;
          after += variance / efficiency(i, j);
        }
      }
    }
    return before == 0 ? 0 : before / after;
  }

  private static double[][] adjusted(Cells cells, Factor factor, List<Factor> blocks) {
    int k = factor.size();
    int[] starts = new int[blocks.size() + 1];
    for (int b = 0; b < blocks.size(); b++) {
      starts[b + 1] = starts[b] + blocks.get(b).size() + 1;
    }
    int all = k + starts[blocks.size()];
    double[][] table = new double[all][all];
    int[] columns = new int[blocks.size() + 1];
    for (int i = 0; i < cells.size(); i++) {
      if (factor.codes()[i] == Factor.MISSING) {
        continue;
      }
      columns[0] = all - k + factor.codes()[i];
      for (int b = 0; b < blocks.size(); b++) {
        int code = blocks.get(b).codes()[i];
        columns[b + 1] = starts[b] + (code == Factor.MISSING ? blocks.get(b).size() : code);
      }
      for (int row : columns) {
        for (int column : columns) {
          table[row][column] += cells.grafts()[i];
        }
      }
    }
    eliminate(table, all - k);
    double[][] information = new double[k][];
    for (int i = 0; i < k; i++) {
      information[i] = Arrays.copyOfRange(table[all - k + i], all - k, all);
    }
    return information;
  }

  /**
   * Sweeps out the first {@code count} rows and columns; those that are sums of others drop out.
   */
  private static void eliminate(double[][] table, int count) {
    double[] diagonal = new double[count];
    for (int p = 0; p < count; p++) {
      diagonal[p] = table[p][p];
    }
    for (int p = 0; p < count; p++) {
      double pivot = table[p][p];
      if (pivot <= PIVOT * diagonal[p] || pivot <= 0) {
        continue;
      }
      for (int i = p + 1; i < table.length; i++) {
        double factor = table[i][p] / pivot;
        if (factor != 0) {
          for (int j = p + 1; j < table.length; j++) {
            table[i][j] -= factor * table[p][j];
          }
        }
      }
    }
  }

  private static double[] levelGrafts(Cells cells, Factor factor) {
    double[] grafts = new double[factor.size()];
    for (int i = 0; i < cells.size(); i++) {
      if (factor.codes()[i] != Factor.MISSING) {
        grafts[factor.codes()[i]] += cells.grafts()[i];
      }
    }
    return grafts;
  }

  private static void addOuter(double[][] matrix, double[] vector, double weight) {
    for (int i = 0; i < vector.length; i++) {
      for (int j = 0; j < vector.length; j++) {
        matrix[i][j] += weight * vector[i] * vector[j];
      }
    }
  }
}
