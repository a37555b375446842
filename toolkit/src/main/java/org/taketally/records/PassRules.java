package org.taketally.records;

/** What one reading checks, row by row and at the end. */
interface PassRules {

  /** Refuses a sheet without the columns nothing can be done without. */
  void requireColumns(Headings headings, SheetRules sheet);

  /** Called when all headings are known, before the first row. */
  void begin();

  /** Checks a row that fits its sheet; errors go to the report. */
  void apply(RecordRow row, SheetReader sheet, RowReport report);

  /** Remembers a kept row, which later rows are compared with. */
  void keep(RecordRow row, SheetReader sheet, RowReport report);

  /** Called after each sheet. */
  void endSheet(ProblemLog log);

  /** Looks at all rows together. */
  void close(HeadingOf headings, String sources, ProblemLog log);

  /** How a column is spelt in a file. */
  interface HeadingOf {
    String heading(String file, RecordColumn column);
  }
}
