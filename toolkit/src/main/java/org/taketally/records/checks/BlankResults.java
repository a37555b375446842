package org.taketally.records.checks;

import java.util.Locale;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;
import org.taketally.terms.Plural;

/**
 * Counts blank results, sheet by sheet, and asks what they mean where they are many: whether a
 * blank is a failure or a graft nobody looked at can move the take by half, and no one but its
 * keeper knows.
 */
final class BlankResults {

  private static final double MANY = 0.1;

  private final long lastDay;
  private long rows;
  private long blanks;
  private long blankGrafts;
  private long grafts;
  private long takes;
  private String file = "";
  private String heading = "";

  /**
   * A count.
   *
   * @param lastDay today, as a day number: a graft planned for later has no result yet
   */
  BlankResults(long lastDay) {
    this.lastDay = lastDay;
  }

  /** Whether the result of the row read last is a blank whose meaning nobody has said. */
  static boolean asks(SheetReader sheet) {
    return isBlank(sheet) && sheet.rules().blankResult().isEmpty();
  }

  static boolean isBlank(SheetReader sheet) {
    return sheet.typed(RecordColumn.TAKES).isEmpty() && sheet.typed(RecordColumn.OUTCOME).isEmpty();
  }

  /** Counts a kept row. */
  void add(RecordRow row, SheetReader sheet, RowReport report) {
    file = report.place().file();
    rows++;
    if (row.assessed()) {
      grafts += row.grafts();
      takes += row.takes();
    } else if (asks(sheet) && row.code(RecordColumn.GRAFT_DATE) <= lastDay) {
      blanks++;
      blankGrafts += row.grafts();
      heading =
          sheet.heading(
              sheet.reads(RecordColumn.TAKES) ? RecordColumn.TAKES : RecordColumn.OUTCOME);
    }
  }

  /** Ends a sheet. */
  void close(ProblemLog log) {
    if (blanks > MANY * rows) {
      ProblemText words = words();
      log.add(ProblemKind.BLANK_RESULTS, Place.whole(file), heading, () -> words);
    }
    rows = 0;
    blanks = 0;
    blankGrafts = 0;
    grafts = 0;
    takes = 0;
  }

  private ProblemText words() {
    if (blanks == rows) {
      return new ProblemText(
          Plural.of(blanks, "result") + ", all blank",
          "results in the cells: a colour, a drawn mark or a crossed-out line isn't read",
          "write the results into the cells; if none of these grafts was looked at, say"
              + " \"blank_result\": \"unassessed\" in the dictionary; if every one of them failed,"
              + " \"blank_result\": \"failed\", if every one took, \"taken\"");
    }
    return new ProblemText(
        String.format(Locale.ROOT, "%,d of %,d results blank", blanks, rows),
        "to be told what a blank means",
        "say it in the dictionary: \"blank_result\": \"unassessed\" (then "
            + took(takes, grafts)
            + ") or "
            + filled());
  }

  /** Where nothing but failures stands on the sheet, its blanks may be the takes. */
  private String filled() {
    boolean failuresAlone = takes == 0 && grafts > 0;
    return "\"blank_result\": \"%s\" (then %s)"
        .formatted(
            failuresAlone ? "taken" : "failed",
            took(failuresAlone ? blankGrafts : takes, grafts + blankGrafts));
  }

  private static String took(long takes, long of) {
    String share = of == 0 ? "" : ", %.0f %%".formatted(100.0 * takes / of);
    return String.format(Locale.ROOT, "%,d of %s took%s", takes, Plural.of(of, "graft"), share);
  }
}
