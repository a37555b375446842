package org.taketally.records.rows;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.sources.Trim;

/**
 * Reads one column of one sheet, remembering what it made of each text; of texts that hardly ever
 * come twice, such as labels, it soon gives that up.
 */
final class ColumnReader {

  private static final int REMEMBERED = 1 << 16;

  private static final Pattern FAILED_FORMULA =
      Pattern.compile("#(N/A|REF!|VALUE!|DIV/0!|NAME\\?|NUM!|NULL!)");
  private static final FieldValue FAILED =
      FieldValue.wrong(
          ProblemKind.SPREADSHEET_ERROR, "a value", "repair the formula in the spreadsheet");

  private final SheetColumn sheet;
  private final FieldReader reader;
  private boolean remember;
  private final Map<String, FieldValue> known = new HashMap<>();
  private long asked;
  private long fresh;
  private String lastText;
  private FieldValue lastValue;

  /**
   * Where the column is.
   *
   * @param field place in the row, from 0
   * @param heading as spelt in the sheet
   * @param place number of the column in the layout
   * @param missing texts that mean "not recorded"
   * @param needed whether blanks are an error
   */
  record SheetColumn(int field, String heading, int place, Set<String> missing, boolean needed) {}

  ColumnReader(SheetColumn sheet, FieldReader reader, boolean remember) {
    this.sheet = sheet;
    this.reader = reader;
    this.remember = remember;
  }

  int field() {
    return sheet.field();
  }

  String heading() {
    return sheet.heading();
  }

  int place() {
    return sheet.place();
  }

  FieldValue read(String text, boolean exact) {
    if (exact || !remember) {
      return fresh(text, exact);
    }
    if (text.equals(lastText)) {
      return lastValue;
    }
    asked++;
    FieldValue value = known.get(text);
    if (value == null) {
      value = fresh(text, false);
      learn(text, value);
    }
    lastText = text;
    lastValue = value;
    return value;
  }

  private void learn(String text, FieldValue value) {
    fresh++;
    if (known.size() < REMEMBERED) {
      known.put(text, value);
    } else if (fresh > asked / 2) {
      remember = false;
      known.clear();
    }
  }

  /** Whether something is recorded there: neither blank nor a word for "not recorded". */
  boolean recorded(String text) {
    String trimmed = Trim.trim(text);
    return !trimmed.isEmpty() && !sheet.missing().contains(trimmed);
  }

  private FieldValue fresh(String text, boolean exact) {
    String trimmed = Trim.trim(text);
    Set<String> missing = sheet.missing();
    if (!trimmed.isEmpty() && (missing.isEmpty() || !missing.contains(trimmed))) {
      boolean failed = trimmed.charAt(0) == '#' && FAILED_FORMULA.matcher(trimmed).matches();
      return failed ? FAILED : reader.read(trimmed, exact);
    }
    return sheet.needed()
        ? FieldValue.wrong(
            ProblemKind.NEEDED_BLANK, "a name", "fill it in; if it isn't known, write \"unknown\"")
        : FieldValue.NOT_RECORDED;
  }
}
