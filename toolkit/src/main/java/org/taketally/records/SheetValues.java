package org.taketally.records;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.TotalWords;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.Trim;

/**
 * The values under a heading, in the order met.
 *
 * @param counts value to how often it stands there; a cell that holds a number or day itself counts
 *     as nothing in doubt and is left out
 * @param exact the same of cells that hold a number or day themselves
 * @param rows rows looked at
 * @param blanks rows with nothing there
 * @param more whether the sheet goes on beyond the rows looked at
 */
record SheetValues(
    Map<String, Integer> counts, Map<String, Integer> exact, long rows, long blanks, boolean more) {

  /** Rows looked at. */
  static final int ROWS = 20_000;

  private static final int VALUES = 1_000;
  private static final String MARK = "[01]";
  private static final String NUMBER = "\\d+([.,]\\d+)?\\s*%?";
  private static final String WHOLE = "\\d{1,6}|[1-9]\\d{0,2}([., \u00a0\u2009\u202f'’]\\d{3})+";
  private static final String OUT_OF = "\\d+\\D+\\d+";
  private static final String WORD = ".*\\p{L}.*";

  /** The values under several headings; a row is blank where all of them are. */
  static SheetValues of(RowSource source, Set<String> headings) {
    int[] places = headings.stream().mapToInt(source.headings()::indexOf).toArray();
    Map<String, Integer> counts = new LinkedHashMap<>();
    Map<String, Integer> exact = new LinkedHashMap<>();
    long rows = 0;
    long blanks = 0;
    boolean more;
    try (RowSource.Rows open = source.open()) {
      RawRow raw = open.next();
      for (; raw != null && rows < ROWS; raw = open.next()) {
        if (isNoGraft(raw, source)) {
          continue;
        }
        if (isTitle(raw)) { // a name that heads the rows below it, perhaps
          if (Arrays.stream(places).anyMatch(field -> field == 0) && counts.size() < VALUES) {
            counts.merge(Trim.trim(raw.fields()[0]), 1, Integer::sum);
          }
          continue;
        }
        rows++;
        boolean blank = true;
        for (int field : places) {
          String text = field < raw.fields().length ? Trim.trim(raw.fields()[field]) : "";
          blank &= text.isEmpty();
          Map<String, Integer> met = raw.exact(field) ? exact : counts;
          if (!text.isEmpty() && (met.size() < VALUES || met.containsKey(text))) {
            met.merge(text, 1, Integer::sum);
          }
        }
        blanks += blank ? 1 : 0;
      }
      more = raw != null;
    }
    return new SheetValues(counts, exact, rows, blanks, more);
  }

  /** Words alone in the first of several cells. */
  private static boolean isTitle(RawRow raw) {
    return raw.fields().length > 2
        && raw.lone() == 0
        && Trim.trim(raw.fields()[0]).matches(".*\\p{L}{3}.*");
  }

  /** A remark, a line of totals, or the headings once more. */
  private static boolean isNoGraft(RawRow raw, RowSource source) {
    return raw.remark()
        || Arrays.stream(raw.fields()).anyMatch(text -> TotalWords.isSum(Trim.trim(text)))
        || raw.headings().equals(source.headings());
  }

  /** Whether every value fits a pattern; false where there is none. */
  boolean all(String pattern) {
    return !counts.isEmpty() && counts.keySet().stream().allMatch(text -> text.matches(pattern));
  }

  /** Cells that fit a pattern. */
  long count(String pattern) {
    return count(counts, pattern);
  }

  private static long count(Map<String, Integer> values, String pattern) {
    return values.entrySet().stream()
        .filter(one -> one.getKey().matches(pattern))
        .mapToLong(Map.Entry::getValue)
        .sum();
  }

  /** Whether more than half of the cells fit a pattern. */
  boolean mostly(String pattern) {
    return 2 * count(pattern) > rows - blanks;
  }

  /** Whether most cells hold whole numbers, as text or as numbers themselves. */
  boolean holdsCounts() {
    return 2 * count(all(), "\\d{1,6}") > rows;
  }

  /** Whether more than half of the cells hold whole numbers, with thousands set apart or not. */
  boolean mostlyWhole() {
    return 2 * count(all(), WHOLE) > rows - blanks;
  }

  boolean any(String pattern) {
    return counts.keySet().stream().anyMatch(text -> text.matches(pattern));
  }

  /** The values, whether cells hold text or numbers and days themselves. */
  Map<String, Integer> all() {
    Map<String, Integer> all = new LinkedHashMap<>(counts);
    exact.forEach((text, count) -> all.merge(text, count, Integer::sum));
    return all;
  }

  /** Whether most cells hold numbers from 0 to 1, with fractions among them. */
  boolean shares() {
    Map<String, Integer> all = all();
    return 2 * count(all, "0([.,]\\d+)?|1([.,]0+)?") > rows - blanks
        && count(all, "0[.,]0*[1-9]\\d*") > 0;
  }

  /** Whether numbers stand there that say nothing unless it is known out of how many. */
  boolean outOfUnknown() {
    return counted(NUMBER) > 0 && !mostly(OUT_OF);
  }

  /**
   * Whether results are counted or said in words: one of our two columns for them. A 1 or 0 may be
   * a mark, too; a number among more words is a slip.
   */
  String result() {
    long wordsForCounts = wordsForCounts();
    long counted = counted(NUMBER + "|" + OUT_OF) + wordsForCounts;
    long words = count(WORD) - count("(?=" + WORD + ")" + OUT_OF) - wordsForCounts;
    boolean takes = counted > 0 ? counted >= words : words == 0 && !exact.isEmpty();
    return (takes ? RecordColumn.TAKES : RecordColumn.OUTCOME).columnName();
  }

  /** Cells with a word for all or for none of the grafts. */
  private long wordsForCounts() {
    return counts.entrySet().stream()
        .filter(one -> CommonWords.isValue(RecordColumn.TAKES.columnName(), one.getKey()))
        .mapToLong(Map.Entry::getValue)
        .sum();
  }

  /** Cells that fit a pattern or hold a number or day themselves, but no mark. */
  private long counted(String pattern) {
    return count(counts, pattern) - count(counts, MARK) + count(exact, ".*") - count(exact, MARK);
  }
}
