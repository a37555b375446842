package org.taketally.answers.confounding;

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
final class DesignInformation {

  private final double[] grafts;
  private final double[][] inverse;
  private final double[][] loose;

  /**
   * @param cells the records
   * @param factor whose levels are compared
   * @param blocks what is allowed for; none gives efficiency 1
   */
  DesignInformation(Cells cells, Factor factor, List<Factor> blocks) {
    double[][] information = InformationMatrix.of(cells, factor, blocks);
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

  private static double[] levelGrafts(Cells cells, Factor factor) {
    double[] grafts = new double[factor.size()];
    for (int i = 0; i < cells.size(); i++) {
      if (factor.code(i) != Factor.MISSING) {
        grafts[factor.code(i)] += cells.grafts(i);
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
