package org.taketally.cells;

import java.util.Arrays;

/** Grafts whose result isn't known, by the codes of each column. */
final class UnassessedCounts {

  private final long[][] grafts;

  UnassessedCounts(int columns) {
    grafts = new long[columns][0];
  }

  void add(int column, int code, int rowGrafts) {
    if (code != Factor.MISSING) {
      if (code >= grafts[column].length) {
        grafts[column] = Arrays.copyOf(grafts[column], Math.max(8, 2 * code + 1));
      }
      grafts[column][code] += rowGrafts;
    }
  }

  long of(int column, int code) {
    return code < grafts[column].length ? grafts[column][code] : 0;
  }
}
