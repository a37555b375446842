package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.GRAFTS;
import static org.taketally.records.columns.RecordColumn.TAKES;

import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/** Notices, sheet by sheet, takes that look like percentages: many above grafts, none above 100. */
final class PercentSuspicion {

  private static final int FEW = 3;
  private static final double A_FIFTH = 0.2;
  private static final int WHOLE = 100;

  private long counted;
  private long aboveGrafts;
  private double highest;
  private String file = "";
  private String heading = "";

  /** Looks at a row, whether it will be kept or not. */
  void see(RecordRow row, SheetReader sheet, RowReport report) {
    double grafts = row.number(GRAFTS);
    double takes = row.number(TAKES);
    if (sheet.converts(TAKES) || Double.isNaN(grafts) || !Double.isFinite(takes)) {
      return;
    }
    file = report.place().file();
    heading = sheet.heading(TAKES);
    counted++;
    aboveGrafts += takes > grafts ? 1 : 0;
    highest = Math.max(highest, takes);
  }

  /** Ends a sheet. */
  void close(ProblemLog log) {
    if (aboveGrafts >= FEW && aboveGrafts >= A_FIFTH * counted && highest <= WHOLE) {
      String found = "%,d of %,d above grafts, none above 100".formatted(aboveGrafts, counted);
      log.add(
          ProblemKind.LOOKS_LIKE_PERCENT,
          Place.whole(file),
          heading,
          () ->
              new ProblemText(
                  found,
                  "counts of grafts",
                  "if they are percentages, say \"unit\": \"percent\" for this column in the"
                      + " dictionary"));
    }
    counted = 0;
    aboveGrafts = 0;
    highest = 0;
  }
}
