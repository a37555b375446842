package org.taketally.wording.opendata;

/** Files of a package: what each holds, and the columns of those that list problems. */
public final class FileWords {

  /** Usable rows. */
  public static final TableWords RECORDS = TableWords.of("Grafts, one row each or one row a batch");

  /** How they are read back. */
  public static final TableWords DICTIONARY = TableWords.of("How records.csv is read back");

  /** How the sheets were read. */
  public static final TableWords SHEETS_DICTIONARY = TableWords.of("How the sheets were read");

  /** All answers. */
  public static final TableWords ANSWERS = TableWords.of("All answers");

  /** Repeated counts. */
  public static final TableWords ASSESSMENTS = TableWords.of("Repeated counts of the same rows");

  /** Rows set aside. */
  public static final TableWords SET_ASIDE = TableWords.of("Rows that can't be used, as typed");

  /** How many problems of each kind. */
  public static final TableWords PROBLEM_COUNTS =
      TableWords.of(
          "What is wrong or worth a look, counted",
          "severity",
          "error: rows set aside; check: worth a look; note",
          "problem",
          "what is wrong",
          "file",
          "sheet it was found in",
          "column",
          "heading in that sheet",
          "count",
          "how often");

  /** Problems one by one. */
  public static final TableWords PROBLEMS =
      TableWords.of(
          "What is wrong or worth a look: the first thousand of each kind, sheet and column",
          "severity",
          "error: row set aside; check: worth a look; note",
          "file",
          "sheet it was found in",
          "line",
          "line there; the headings are line 1",
          "column",
          "heading there",
          "found",
          "what stands there",
          "expected",
          "what would have been right",
          "remedy",
          "what to do");

  private FileWords() {}

  /**
   * What a column of the user's own means.
   *
   * @return a few words
   */
  public static String ownColumn() {
    return "a column of the sheets' own";
  }

  /**
   * What a column of rows set aside means.
   *
   * @return a few words
   */
  public static String asTyped() {
    return "as typed in the sheet";
  }

  /**
   * A grafter whose name stays behind.
   *
   * @param number 1 upwards, in the order they first come
   * @return what stands in the records instead
   */
  public static String numberedGrafter(int number) {
    return "grafter " + number;
  }

  /**
   * What the dictionary beside the records is for.
   *
   * @return a sentence, without a capital
   */
  public static String aboutDictionary() {
    return "reads records.csv back; a blank result means that nobody knows it any more";
  }
}
