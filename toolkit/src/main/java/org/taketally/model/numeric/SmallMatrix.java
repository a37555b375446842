package org.taketally.model.numeric;

/**
 * Cholesky decomposition of a small symmetric positive definite matrix: effects and standard
 * deviations, never levels.
 */
public final class SmallMatrix {

  private final double[][] factor;

  private SmallMatrix(double[][] factor) {
    this.factor = factor;
  }

  /**
   * Decomposes.
   *
   * @return null if the matrix isn't positive definite to 12 digits
   */
  public static SmallMatrix of(double[][] matrix) {
    int size = matrix.length;
    double[][] factor = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = matrix[i][j];
        for (int k = 0; k < j; k++) {
          sum -= factor[i][k] * factor[j][k];
        }
        if (j < i) {
          factor[i][j] = sum / factor[j][j];
        } else if (sum > 1e-12 * Math.abs(matrix[i][i])) {
          factor[i][i] = Math.sqrt(sum);
        } else {
          return null;
        }
      }
    }
    return new SmallMatrix(factor);
  }

  /** The same, with a diagonal as little larger as it takes to be positive definite. */
  public static SmallMatrix ofSteadied(double[][] matrix) {
    SmallMatrix whole = of(matrix);
    double least = 0;
    for (int i = 0; i < matrix.length; i++) {
      least = Math.max(least, 1e-10 * Math.abs(matrix[i][i]));
    }
    for (double added = 1e-10; whole == null; added *= 10) {
      double[][] steadied = new double[matrix.length][];
      for (int i = 0; i < matrix.length; i++) {
        steadied[i] = matrix[i].clone();
        steadied[i][i] += added * (Math.abs(matrix[i][i]) + least + Double.MIN_NORMAL);
      }
      whole = of(steadied);
    }
    return whole;
  }

  /** L x. */
  public double[] times(double[] x) {
    double[] product = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      for (int k = 0; k <= i; k++) {
        product[i] += factor[i][k] * x[k];
      }
    }
    return product;
  }

  public double[] solve(double[] right) {
    return solveTransposed(solveLower(right));
  }

  /** Solves L x = right. */
  public double[] solveLower(double[] right) {
    double[] x = right.clone();
    for (int i = 0; i < x.length; i++) {
      for (int k = 0; k < i; k++) {
        x[i] -= factor[i][k] * x[k];
      }
      x[i] /= factor[i][i];
    }
    return x;
  }

  /** Solves L'x = right: turns independent standard normals into draws with this precision. */
  public double[] solveTransposed(double[] right) {
    double[] x = right.clone();
    for (int i = x.length - 1; i >= 0; i--) {
      for (int k = i + 1; k < x.length; k++) {
        x[i] -= factor[k][i] * x[k];
      }
      x[i] /= factor[i][i];
    }
    return x;
  }

  public double[][] inverse() {
    int size = factor.length;
    double[][] inverse = new double[size][];
    for (int i = 0; i < size; i++) {
      double[] unit = new double[size];
      unit[i] = 1;
      inverse[i] = solve(unit);
    }
    return inverse;
  }

  public double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < factor.length; i++) {
      sum += 2 * Math.log(factor[i][i]);
    }
    return sum;
  }

  /** The rows and columns of {@code matrix} that are kept. */
  public static double[][] part(double[][] matrix, int[] kept) {
    double[][] part = new double[kept.length][kept.length];
    for (int i = 0; i < kept.length; i++) {
      for (int j = 0; j < kept.length; j++) {
        part[i][j] = matrix[kept[i]][kept[j]];
      }
    }
    return part;
  }
}
