package org.taketally.wording.opendata;

import java.util.List;

/** Files of a package: what each holds, and the columns of those that list problems. */
public final class FileWords {

  private FileWords() {}

  /** A file whose title and columns are the same in every package. */
  public enum Holds {
    /** Usable rows. */
    RECORDS("Grafts, one row each or one row a batch"),
    /** How they are read back. */
    DICTIONARY("How records.csv is read back"),
    /** How the sheets were read. */
    SHEETS_DICTIONARY("How the sheets were read"),
    /** All answers. */
    ANSWERS("All answers"),
    /** Repeated counts. */
    ASSESSMENTS("Repeated counts of the same rows"),
    /** Rows set aside. */
    SET_ASIDE("Rows that can't be used, as typed"),
    /** How many problems of each kind. */
    PROBLEM_COUNTS(
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
        "how often"),
    /** Problems one by one. */
    PROBLEMS(
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

    private final String title;

    @SuppressWarnings("ImmutableEnumChecker") // a list nobody can write to
    private final List<Heading> headings;

    Holds(String title, String... headings) {
      this.title = title;
      this.headings = Heading.list(headings);
    }

    /**
     * What the file holds.
     *
     * @return a few words
     */
    public String title() {
      return title;
    }

    /**
     * Its columns, of a table that isn't records, counts or an answer.
     *
     * @return in the order of the file
     */
    public List<Heading> headings() {
      return headings;
    }
  }

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
