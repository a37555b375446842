package org.taketally.records.columns;

/** What kind of value a column holds. */
public enum ColumnKind {
  /** Free text, never used as levels. */
  TEXT("text"),
  /** Names that group the rows. */
  LEVELS("name"),
  /** A decimal number. */
  NUMBER("number"),
  /** A whole number. */
  COUNT("whole number"),
  /** A calendar day. */
  DATE("date");

  private final String word;

  ColumnKind(String word) {
    this.word = word;
  }

  /**
   * The kind in one word or two.
   *
   * @return e.g. {@code whole number}
   */
  public String word() {
    return word;
  }
}
