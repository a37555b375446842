package org.taketally.records;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.Trim;

/**
 * The values under a heading, in the order met.
 *
 * @param counts value to how often it stands there; a cell that holds a number or day itself counts
 *     as nothing in doubt and is left out
 * @param rows rows looked at
 * @param blanks rows with nothing there
 * @param exact cells that hold a number or day themselves
 */
record SheetValues(Map<String, Integer> counts, long rows, long blanks, long exact) {

  private static final int ROWS = 20_000;
  private static final int VALUES = 1_000;

  static SheetValues of(RowSource source, String heading) {
    return of(source, Set.of(heading));
  }

  /** The values under several headings; a row is blank where all of them are. */
  static SheetValues of(RowSource source, Set<String> headings) {
    int[] places = headings.stream().mapToInt(source.headings()::indexOf).toArray();
    Map<String, Integer> counts = new LinkedHashMap<>();
    long rows = 0;
    long blanks = 0;
    long exact = 0;
    try (RowSource.Rows open = source.open()) {
      for (RawRow raw = open.next(); raw != null && rows < ROWS; raw = open.next()) {
        rows++;
        boolean blank = true;
        for (int field : places) {
          String text = field < raw.fields().length ? Trim.trim(raw.fields()[field]) : "";
          blank &= text.isEmpty();
          if (!text.isEmpty() && raw.exact(field)) {
            exact++;
          } else if (!text.isEmpty() && (counts.size() < VALUES || counts.containsKey(text))) {
            counts.merge(text, 1, Integer::sum);
          }
        }
        blanks += blank ? 1 : 0;
      }
    }
    return new SheetValues(counts, rows, blanks, exact);
  }

  /** Whether every value fits a pattern; false where there is none. */
  boolean all(String pattern) {
    return !counts.isEmpty() && counts.keySet().stream().allMatch(text -> text.matches(pattern));
  }

  /** Cells that fit a pattern. */
  long count(String pattern) {
    return counts.entrySet().stream()
        .filter(one -> one.getKey().matches(pattern))
        .mapToLong(Map.Entry::getValue)
        .sum();
  }

  /** Whether more than half of the cells fit a pattern. */
  boolean mostly(String pattern) {
    return 2 * count(pattern) > rows - blanks;
  }

  boolean any(String pattern) {
    return counts.keySet().stream().anyMatch(text -> text.matches(pattern));
  }

  /** Whether results are counted or said in words: one of our two columns for them. */
  String result() {
    boolean marks = all("[01]");
    boolean numbers = exact > 0 || any("\\d+([.,]\\d+)?\\s*%?") || any("\\d+\\D+\\d+");
    return numbers && !marks ? RecordColumn.TAKES.columnName() : RecordColumn.OUTCOME.columnName();
  }
}
