package org.taketally.records.rows;

/** Reads the fields of one column: text, trimmed and not blank, to a value or what is wrong. */
interface FieldReader {

  /**
   * Reads one field.
   *
   * @param text never blank
   * @param exact whether the sheet itself says it is a number or a date (a cell of a workbook, a
   *     typed column of a query), so that no notation is in doubt
   */
  FieldValue read(String text, boolean exact);

  /** The reader for free text. */
  static FieldValue freeText(String text, boolean exact) {
    return FieldValue.text(text);
  }
}
