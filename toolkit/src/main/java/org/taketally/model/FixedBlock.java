package org.taketally.model;

import java.util.List;

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
}
