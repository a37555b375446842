package org.taketally.records.rows;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * What is found wrong with the row in hand. Errors set it aside; then they alone go to the log,
 * because the rest can be judged only when the row is repaired.
 */
public final class RowReport {

  private final ProblemLog log;
  private final List<Fault> errors = new ArrayList<>();
  private final List<Remark> remarks = new ArrayList<>();
  private Place place = Place.whole("");

  private record Fault(ProblemKind kind, Problem problem) {}

  private record Remark(
      ProblemKind kind, Severity severity, String heading, Supplier<ProblemText> words) {}

  public RowReport(ProblemLog log) {
    this.log = log;
  }

  public void begin(Place thePlace) {
    place = thePlace;
    errors.clear();
    remarks.clear();
  }

  public Place place() {
    return place;
  }

  /**
   * Reports a problem.
   *
   * @param heading the column as spelt in the sheet, or empty
   * @param words asked for before the next row, and only if the problem is kept in full
   */
  public void add(ProblemKind kind, String heading, Supplier<ProblemText> words) {
    if (kind.severity() == Severity.ERROR) {
      errors.add(new Fault(kind, ProblemLog.problem(kind, place, heading, words.get())));
    } else {
      remarks.add(new Remark(kind, kind.severity(), heading, words));
    }
  }

  /** Reports a cell that can't be read, of a column whose values may be missing. */
  public void addUnread(ProblemKind kind, String heading, Supplier<ProblemText> words) {
    remarks.add(new Remark(kind, Severity.CHECK, heading, words));
  }

  public boolean hasErrors() {
    return !errors.isEmpty();
  }

  /** Whether the value of a column couldn't be read. */
  public boolean failed(String heading) {
    if (errors.isEmpty()) {
      return false;
    }
    for (Fault error : errors) {
      if (error.problem().column().equals(heading)) {
        return true;
      }
    }
    return false;
  }

  /** Whether a problem of a kind was found. */
  public boolean failed(ProblemKind kind) {
    if (errors.isEmpty()) {
      return false;
    }
    for (Fault error : errors) {
      if (error.kind() == kind) {
        return true;
      }
    }
    return false;
  }

  /** Hands on what was found: of a row of totals only that it is one. */
  public void end() {
    if (errors.isEmpty()) {
      for (Remark remark : remarks) {
        log.add(remark.kind(), remark.severity(), place, remark.heading(), remark.words());
      }
      return;
    }
    for (Fault error : errors) {
      if (error.kind() == ProblemKind.SUMMARY_ROW) {
        errors.retainAll(List.of(error));
        break;
      }
    }
    errors.forEach(error -> log.add(error.kind(), error.problem()));
  }

  List<String> reasons() {
    return errors.stream().map(error -> error.problem().sentence()).toList();
  }
}
