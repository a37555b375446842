package org.taketally.model;

import java.util.List;
import org.taketally.model.laplace.Patterns;
import org.taketally.model.numeric.Numbering;

/** The columns of X that belong to one term. */
interface FixedBlock {

  String term();

  /** One label a column; empty for intercept and straight lines. */
  List<String> labels();

  /** Distinct contents, numbered: cells with the same code have the same columns. */
  int[] codes();

  int codeCount();

  /** Columns of one code into {@code row}, from {@code at}. */
  void fill(int code, double[] row, int at);

  /** Columns for a level or number that need not occur. */
  void fill(String level, double[] row, int at);

  default int width() {
    return labels().size();
  }

  /** Distinct rows of X, the intercept first, then the columns of the blocks. */
  static Patterns patterns(int cells, List<FixedBlock> blocks) {
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
}
