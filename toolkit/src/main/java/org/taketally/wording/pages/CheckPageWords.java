package org.taketally.wording.pages;

import java.util.List;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;
import org.taketally.terms.Severity;
import org.taketally.wording.Words;

/** The page of problems in words. */
public final class CheckPageWords {

  /** Title of the page. */
  public static final String TITLE = "Can these records be trusted?";

  /** Where there is no problem. */
  public static final String NOTHING = "Nothing.";

  /** Headings of a table of problems. */
  public static final List<String> HEADINGS =
      List.of("Place", "Column", "Found", "Expected", "What to do");

  private CheckPageWords() {}

  /**
   * How many rows were read and used.
   *
   * @param provenance of the records
   * @return a sentence
   */
  public static String counts(Provenance provenance) {
    return "%s read: %s used, %s set aside."
        .formatted(
            Words.count(provenance.rowsRead(), "row"),
            Words.count(provenance.rowsKept()),
            Words.count(provenance.rowsSetAside()));
  }

  /**
   * The same of records and of repeated counts of them.
   *
   * @param records rows of the records
   * @param counts rows of the counts
   * @return two sentences
   */
  public static String counts(Provenance records, Provenance counts) {
    return "Records: %s Repeated counts: %s".formatted(counts(records), counts(counts));
  }

  /**
   * Heading of problems of a kind.
   *
   * @param severity of all of them
   * @return a few words
   */
  public static String heading(Severity severity) {
    return switch (severity) {
      case ERROR -> "Set aside until repaired";
      case CHECK -> "Used, but please look";
      case NOTE -> "Good to know";
    };
  }

  /**
   * Caption of a table of problems.
   *
   * @param problems how many there are
   * @param shown how many kinds the table holds
   * @param kinds how many kinds there are
   * @return a few words
   */
  public static String caption(long problems, int shown, int kinds) {
    String caption = Words.count(problems, "problem");
    return shown == kinds
        ? caption
        : caption + ", the first %s of %,d kinds".formatted(Words.count(shown), kinds);
  }

  /**
   * Equal problems as a line of the table: how often, and the first few.
   *
   * @param group equal problems
   * @return one text per column
   */
  public static List<String> row(ProblemSummary.Group group) {
    Problem first = group.first().get(0);
    if (group.count() == 1) {
      String place = first.line() > 0 ? first.file() + " line " + first.line() : first.file();
      return List.of(place, first.column(), first.found(), first.expected(), first.remedy());
    }
    return List.of(
        group.file(), group.column(), group.examples(), first.expected(), first.remedy());
  }
}
