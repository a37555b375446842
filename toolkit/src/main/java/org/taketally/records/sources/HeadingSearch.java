package org.taketally.records.sources;

import java.util.List;
import java.util.function.ToIntFunction;

/** Looks for the line of headings below titles and remarks. */
final class HeadingSearch {

  private static final int LINES = 30;
  private static final int ENOUGH = 2;

  private HeadingSearch() {}

  /**
   * The first line with at least two headings that are known.
   *
   * @return its number; 0 if there is none among the first thirty
   */
  static long line(RowSource.Rows rows, ToIntFunction<List<String>> known) {
    RawRow row = rows.next();
    for (int i = 0; i < LINES && row != null; i++) {
      if (known.applyAsInt(row.headings()) >= ENOUGH) {
        return row.line();
      }
      row = rows.next();
    }
    return 0;
  }
}
