package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.CULTIVAR;
import static org.taketally.records.columns.RecordColumn.GRAFTS;
import static org.taketally.records.columns.RecordColumn.ROOTSTOCK;
import static org.taketally.records.columns.RecordColumn.SEASON;

import it.unimi.dsi.fastutil.longs.Long2LongOpenHashMap;
import java.util.ArrayList;
import java.util.List;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/**
 * Looks, file by file, for batch rows that only sum up the single grafts of the same file, or the
 * rows of the same cultivar and rootstock right above.
 */
final class SummaryRows {

  private static final int FEW = 3;
  private static final int BATCHES_KEPT = 100_000;
  private static final int CODE_BITS = 24;
  private static final int COUNT_BITS = 31;

  private final Long2LongOpenHashMap singles = new Long2LongOpenHashMap();
  private final List<Batch> batches = new ArrayList<>();

  /** What is right above, of one season, cultivar and rootstock. */
  private long runKey;

  private long runRows;
  private long runGrafts;
  private long runTakes;
  private long runSingles;

  private record Batch(Place place, String heading, long key, int grafts, int takes) {}

  void add(RecordRow row, SheetReader sheet, RowReport report) {
    if (!row.assessed()) {
      return;
    }
    Place place = report.place();
    long key = key(row);
    sumOfRun(key, row, sheet, report);
    if (row.grafts() == 1) {
      runSingles += (1L << COUNT_BITS) + row.takes();
    } else if (batches.size() < BATCHES_KEPT) {
      batches.add(new Batch(place, sheet.heading(GRAFTS), key, row.grafts(), row.takes()));
    }
  }

  /** Asks whether a row sums up those of its own names right above it. */
  private void sumOfRun(long key, RecordRow row, SheetReader sheet, RowReport report) {
    if (key != runKey) {
      endRun();
      runKey = key;
    }
    if (runRows >= FEW && runGrafts == row.grafts() && runTakes == row.takes()) {
      String found = row.takes() + " of " + row.grafts();
      String expected =
          "a batch of its own: the %,d rows above, of the same cultivar and rootstock, come to as many"
              .formatted(runRows);
      report.add(
          ProblemKind.LOOKS_LIKE_SUMMARY,
          sheet.heading(GRAFTS),
          () ->
              new ProblemText(
                  found,
                  expected,
                  "take the row out if it sums them up; else each graft counts twice"));
    }
    runRows++;
    runGrafts += row.grafts();
    runTakes += row.takes();
  }

  private void endRun() {
    if (runSingles > 0) {
      singles.addTo(runKey, runSingles);
    }
    runRows = 0;
    runGrafts = 0;
    runTakes = 0;
    runSingles = 0;
  }

  private static long key(RecordRow row) {
    long season = row.has(SEASON) ? row.code(SEASON) + 1 : 0;
    return (season << (2 * CODE_BITS))
        | ((long) row.code(CULTIVAR) << CODE_BITS)
        | row.code(ROOTSTOCK);
  }

  /** Ends a file. */
  void close(ProblemLog log) {
    endRun();
    for (Batch batch : batches) {
      long sum = singles.get(batch.key());
      long count = sum >>> COUNT_BITS;
      long takes = sum & ((1L << COUNT_BITS) - 1);
      if (count >= FEW && count == batch.grafts() && takes == batch.takes()) {
        log.add(
            ProblemKind.LOOKS_LIKE_SUMMARY,
            batch.place(),
            batch.heading(),
            () ->
                new ProblemText(
                    batch.takes() + " of " + batch.grafts(),
                    "a batch of its own: as many single grafts of the same season, cultivar and"
                        + " rootstock, with as many takes, are in this file",
                    "take the row out if it sums them up; else each graft counts twice"));
      }
    }
    singles.clear();
    batches.clear();
  }
}
