package org.taketally.model;

import java.util.Arrays;
import java.util.List;

/**
 * Distinct rows of X. There are far fewer of them than cells, so X is kept once a pattern.
 *
 * @param codes pattern of each cell
 * @param rows one row of X a pattern
 * @param width columns of X
 */
record Patterns(int[] codes, double[][] rows, int width) {

  static Patterns of(int cells, List<FixedBlock> blocks) {
    int[] codes = new int[cells];
    int count = Math.min(cells, 1);
    for (FixedBlock block : blocks) {
      Numbering numbering = new Numbering();
      for (int i = 0; i < cells; i++) {
        codes[i] = numbering.number((long) codes[i] * block.codeCount() + block.codes()[i]);
      }
      count = numbering.count();
    }
    int width = 1 + blocks.stream().mapToInt(FixedBlock::width).sum();
    double[][] rows = new double[count][];
    for (int i = 0; i < cells; i++) {
      if (rows[codes[i]] == null) {
        rows[codes[i]] = row(blocks, i, width);
      }
    }
    return new Patterns(codes, rows, width);
  }

  private static double[] row(List<FixedBlock> blocks, int cell, int width) {
    double[] row = new double[width];
    row[0] = 1;
    int at = 1;
    for (FixedBlock block : blocks) {
      block.fill(block.codes()[cell], row, at);
      at += block.width();
    }
    return row;
  }

  /** X beta, one value a pattern. */
  double[] times(double[] beta) {
    double[] product = new double[rows.length];
    for (int r = 0; r < rows.length; r++) {
      product[r] = Vectors.dot(rows[r], beta);
    }
    return product;
  }

  /** Sums of a cell column, one a pattern. */
  double[] sums(int[] values) {
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
