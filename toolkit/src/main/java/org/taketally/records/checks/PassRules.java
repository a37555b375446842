package org.taketally.records.checks;

import java.util.Map;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.rows.Headings;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/** What one reading checks, row by row and at the end. */
public interface PassRules {

  /** Refuses a sheet without the columns nothing can be done without. */
  void requireColumns(Headings headings, SheetRules sheet);

  /** Whether a column of the dictionary that no sheet has is worth a word. */
  default boolean usesAllColumns() {
    return true;
  }

  /** Called when all headings are known, before the first row. */
  void begin();

  /** Checks a row that fits its sheet; errors go to the report. */
  void apply(RecordRow row, SheetReader sheet, RowReport report);

  /** Remembers a kept row, which later rows are compared with. */
  void keep(RecordRow row, SheetReader sheet, RowReport report);

  /** Called after each sheet. */
  void endSheet(ProblemLog log);

  /** Looks at all rows together. */
  void close(Sheets sheets, String sources, ProblemLog log);

  /** What is known of the sheets read. */
  interface Sheets {

    /** How a column is spelt in a file. */
    String heading(String file, RecordColumn column);

    /** Spellings of names, and the names meant, as the dictionary says. */
    Map<String, String> spellings(RecordColumn column);
  }
}
