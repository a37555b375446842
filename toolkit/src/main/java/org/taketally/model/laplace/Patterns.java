package org.taketally.model.laplace;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.taketally.model.numeric.Vectors;

/**
 * Distinct rows of X. There are far fewer of them than cells, so X is kept once a pattern.
 *
 * @param codes pattern of each cell
 * @param rows one row of X a pattern
 * @param width columns of X
 */
public record Patterns(int[] codes, double[][] rows, int width) {

  /** X beta, one value a pattern. */
  public double[] times(double[] beta) {
    double[] product = new double[rows.length];
    for (int r = 0; r < rows.length; r++) {
      product[r] = Vectors.dot(rows[r], beta);
    }
    return product;
  }

  /** Where each row isn't zero: of the columns of levels one or none has an entry. */
  public int[][] filled() {
    int[][] filled = new int[rows.length][];
    for (int r = 0; r < rows.length; r++) {
      double[] row = rows[r];
      filled[r] = IntStream.range(0, width).filter(j -> row[j] != 0).toArray();
    }
    return filled;
  }

  /** Sums of a cell column, one a pattern. */
  public double[] sums(int[] values) {
    double[] sums = new double[rows.length];
    for (int i = 0; i < codes.length; i++) {
      sums[codes[i]] += values[i];
    }
    return sums;
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(codes);
  }
}
