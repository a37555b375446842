package org.taketally.model.numeric;

import java.util.Arrays;

/**
 * Dense products, Cholesky decomposition and inverse on rows of doubles, in pieces the compiler
 * turns into vector instructions: two rows of the result at a time take four rows of the right
 * factor, so that each loaded number is used twice.
 */
public final class Dense {

  private static final int ROWS = 32;
  private static final int COLUMNS = 512;
  private static final int BLOCK = 64;

  /** A product to add: result[i][j] += scale * sum over k of left(k, i) right[k][j]. */
  public record Product(
      double[][] result,
      double[][] left,
      boolean leftByColumn,
      double[][] right,
      int innerFrom,
      int innerTo,
      double scale) {

    double coefficient(int k, int i) {
      return scale * (leftByColumn ? left[k][i] : left[i][k]);
    }

    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  private final Parallel parallel;

  public Dense(Parallel parallel) {
    this.parallel = parallel;
  }

  /** Whole rows of the result. */
  public void add(Product product, int rowFrom, int rowTo, int columnTo) {
    parallel.run(
        pieces(rowFrom, rowTo),
        piece -> {
          int from = rowFrom + piece * ROWS;
          rows(product, from, Math.min(rowTo, from + ROWS), 0, columnTo);
        });
  }

  /** Upper triangle of the result only (a little below the diagonal is written too). */
  public void addUpper(Product product, int rowFrom, int size) {
    parallel.run(
        pieces(rowFrom, size),
        piece -> {
          int from = rowFrom + piece * ROWS;
          rows(product, from, Math.min(size, from + ROWS), from, size);
        });
  }

  private static int pieces(int from, int to) {
    return (to - from + ROWS - 1) / ROWS;
  }

  private static void rows(Product p, int rowFrom, int rowTo, int columnFrom, int columnTo) {
    double[] spare = (rowTo - rowFrom) % 2 == 1 ? new double[columnTo] : null;
    for (int j = columnFrom; j < columnTo; j += COLUMNS) {
      int to = Math.min(columnTo, j + COLUMNS);
      for (int k = p.innerFrom(); k < p.innerTo(); k += 4) {
        for (int i = rowFrom; i < rowTo; i += 2) {
          tile(p, i, i + 1 < rowTo ? p.result()[i + 1] : spare, k, j, to);
        }
      }
    }
  }

  private static void tile(Product p, int i, double[] second, int k, int from, int to) {
    int left = p.innerTo() - k;
    int row = Math.min(i + 1, p.leftByColumn() ? p.left()[k].length - 1 : p.left().length - 1);
    double[][] right = p.right();
    int k1 = left > 1 ? k + 1 : k;
    int k2 = left > 2 ? k + 2 : k;
    int k3 = left > 3 ? k + 3 : k;
    double on1 = left > 1 ? 1 : 0;
    double on2 = left > 2 ? 1 : 0;
    double on3 = left > 3 ? 1 : 0;
    twoByFour(
        p.result()[i],
        second,
        right[k],
        right[k1],
        right[k2],
        right[k3],
        p.coefficient(k, i),
        on1 * p.coefficient(k1, i),
        on2 * p.coefficient(k2, i),
        on3 * p.coefficient(k3, i),
        p.coefficient(k, row),
        on1 * p.coefficient(k1, row),
        on2 * p.coefficient(k2, row),
        on3 * p.coefficient(k3, row),
        from,
        to);
  }

  /** The one loop that must be fast; separate scalars and arrays, or the compiler gives up. */
  private static void twoByFour(
      double[] c,
      double[] d,
      double[] b0,
      double[] b1,
      double[] b2,
      double[] b3,
      double a0,
      double a1,
      double a2,
      double a3,
      double e0,
      double e1,
      double e2,
      double e3,
      int from,
      int to) {
    for (int j = from; j < to; j++) {
      double x0 = b0[j];
      double x1 = b1[j];
      double x2 = b2[j];
      double x3 = b3[j];
      c[j] += a0 * x0 + a1 * x1 + a2 * x2 + a3 * x3;
      d[j] += e0 * x0 + e1 * x1 + e2 * x2 + e3 * x3;
    }
  }

  public static void axpy(double[] c, double a, double[] b, int from, int to) {
    for (int j = from; j < to; j++) {
      c[j] += a * b[j];
    }
  }

  /**
   * Overwrites the upper triangle of a symmetric matrix by U with U'U = matrix.
   *
   * @return rows done: all of them if the matrix is positive definite
   */
  public int cholesky(double[][] matrix) {
    int size = matrix.length;
    for (int block = 0; block < size; block += BLOCK) {
      int end = Math.min(size, block + BLOCK);
      for (int k = block; k < end; k++) {
        double[] row = matrix[k];
        for (int l = block; l < k; l++) {
          axpy(row, -matrix[l][k], matrix[l], k, size);
        }
        if (!(row[k] > 0)) {
          return k;
        }
        double scale = 1 / Math.sqrt(row[k]);
        for (int j = k; j < size; j++) {
          row[j] *= scale;
        }
      }
      addUpper(new Product(matrix, matrix, true, matrix, block, end, -1), end, size);
    }
    return size;
  }

  /** Inverse of the leading part of U'U, as full rows. */
  public double[][] inverse(double[][] upper, int size) {
    double[][] g = new double[size][size];
    for (int block = 0; block < size; block += BLOCK) {
      int end = Math.min(size, block + BLOCK);
      for (int inner = 0; inner < block; inner += BLOCK) {
        add(
            new Product(g, upper, true, g, inner, Math.min(block, inner + BLOCK), -1),
            block,
            end,
            inner + BLOCK);
      }
      for (int k = block; k < end; k++) {
        g[k][k] = 1;
        for (int l = block; l < k; l++) {
          axpy(g[k], -upper[l][k], g[l], 0, l + 1);
        }
        for (int j = 0; j <= k; j++) {
          g[k][j] /= upper[k][k];
        }
      }
    }
    return products(g, size);
  }

  /** G'G for lower triangular G. */
  private double[][] products(double[][] g, int size) {
    double[][] result = new double[size][size];
    parallel.run(
        pieces(0, size),
        piece -> {
          int from = piece * ROWS;
          int to = Math.min(size, from + ROWS);
          rows(new Product(result, g, true, g, from, size, 1), from, to, 0, to);
        });
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < i; j++) {
        result[j][i] = result[i][j];
      }
    }
    return result;
  }

  /**
   * Solves U'y = right in place over the first {@code size} rows; later entries are updated too.
   */
  public static void solveLower(double[][] upper, double[] right, int size) {
    for (int k = 0; k < size; k++) {
      right[k] /= upper[k][k];
      axpy(right, -right[k], upper[k], k + 1, right.length);
    }
  }

  /** Solves Ux = right in place over the first {@code size} rows. */
  public static void solveUpper(double[][] upper, double[] right, int size) {
    for (int k = size - 1; k >= 0; k--) {
      double[] row = upper[k];
      right[k] = (right[k] - Vectors.dot(row, k + 1, right, k + 1, size - k - 1)) / row[k];
    }
  }

  /** Sets all numbers to zero. */
  public static double[][] cleared(double[][] matrix) {
    for (double[] row : matrix) {
      Arrays.fill(row, 0);
    }
    return matrix;
  }

  public static double[][] zeros(int rows, int columns) {
    double[][] zeros = new double[rows][];
    Arrays.setAll(zeros, i -> new double[columns]);
    return zeros;
  }
}
