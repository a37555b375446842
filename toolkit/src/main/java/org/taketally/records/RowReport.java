package org.taketally.records;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** What is found wrong with the row in hand. Errors set it aside; the rest goes to the log. */
final class RowReport {

  private final ProblemLog log;
  private final List<Problem> errors = new ArrayList<>();
  private final List<String> failedColumns = new ArrayList<>();
  private Place place = Place.whole("");

  RowReport(ProblemLog log) {
    this.log = log;
  }

  void begin(Place thePlace) {
    place = thePlace;
    errors.clear();
    failedColumns.clear();
  }

  Place place() {
    return place;
  }

  /**
   * Reports a problem.
   *
   * @param heading the column as spelt in the sheet, or empty
   * @param words asked for only if the problem is kept in full
   */
  void add(ProblemKind kind, String heading, Supplier<Wording> words) {
    if (kind.severity() == Severity.ERROR) {
      Problem problem = ProblemLog.problem(kind, place, heading, words.get());
      errors.add(problem);
      failedColumns.add(heading);
      log.add(kind, problem);
    } else {
      log.add(kind, place, heading, words);
    }
  }

  boolean hasErrors() {
    return !errors.isEmpty();
  }

  /** Whether the value of a column couldn't be read. */
  boolean failed(String heading) {
    return failedColumns.contains(heading);
  }

  List<String> reasons() {
    return errors.stream().map(Problem::sentence).toList();
  }
}
