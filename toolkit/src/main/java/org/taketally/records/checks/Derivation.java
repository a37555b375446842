package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.ASSESSED_DATE;
import static org.taketally.records.columns.RecordColumn.BUDWOOD_CUT_DATE;
import static org.taketally.records.columns.RecordColumn.CULTIVAR;
import static org.taketally.records.columns.RecordColumn.GRAFT_DATE;
import static org.taketally.records.columns.RecordColumn.REPLACES;
import static org.taketally.records.columns.RecordColumn.ROOTSTOCK;
import static org.taketally.records.columns.RecordColumn.SCION_DIAMETER_MM;
import static org.taketally.records.columns.RecordColumn.SITE;
import static org.taketally.records.columns.RecordColumn.STOCK_DIAMETER_MM;

import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.Plain;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.ColumnTrack;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/** Works out the derived columns of a row. */
final class Derivation {

  private static final int UNKNOWN = -1;

  private final RecordsLayout layout;
  private final Long2IntOpenHashMap pairings = new Long2IntOpenHashMap();
  private final Long2IntOpenHashMap days = new Long2IntOpenHashMap();

  Derivation(RecordsLayout layout) {
    this.layout = layout;
    pairings.defaultReturnValue(UNKNOWN);
    days.defaultReturnValue(UNKNOWN);
  }

  /** Marks the derived columns whose sources the sheets have. */
  void markPresent() {
    mark(DerivedColumn.PAIRING, CULTIVAR, ROOTSTOCK);
    mark(DerivedColumn.STORAGE_DAYS, GRAFT_DATE, BUDWOOD_CUT_DATE);
    mark(DerivedColumn.DAYS_TO_ASSESSMENT, GRAFT_DATE, ASSESSED_DATE);
    mark(DerivedColumn.DIAMETER_MISMATCH, SCION_DIAMETER_MM, STOCK_DIAMETER_MM);
    if (layout.track(REPLACES).present()) {
      layout.track(DerivedColumn.GRAFT_ATTEMPT).markPresent();
    }
    if (layout.track(GRAFT_DATE).present()) {
      layout.track(DerivedColumn.GRAFTING_DAY).markPresent();
      layout.track(RecordColumn.SEASON).markPresent();
    }
  }

  private void mark(DerivedColumn column, RecordColumn one, RecordColumn other) {
    if (layout.track(one).present() && layout.track(other).present()) {
      layout.track(column).markPresent();
    }
  }

  void apply(RecordRow row, SheetReader sheet, RowReport report) {
    days(row, DerivedColumn.STORAGE_DAYS, BUDWOOD_CUT_DATE, GRAFT_DATE, sheet, report);
    days(row, DerivedColumn.DAYS_TO_ASSESSMENT, GRAFT_DATE, ASSESSED_DATE, sheet, report);
    double mismatch = Math.abs(row.number(STOCK_DIAMETER_MM) - row.number(SCION_DIAMETER_MM));
    if (!Double.isNaN(mismatch)) {
      row.setNumber(RecordsLayout.place(DerivedColumn.DIAMETER_MISMATCH), mismatch);
    }
    if (layout.track(DerivedColumn.PAIRING).wanted() && row.has(CULTIVAR) && row.has(ROOTSTOCK)) {
      row.setCode(RecordsLayout.place(DerivedColumn.PAIRING), pairing(row));
    }
    boolean placed = row.has(SITE) || !layout.track(SITE).present();
    if (layout.track(DerivedColumn.GRAFTING_DAY).wanted() && placed && row.has(GRAFT_DATE)) {
      row.setCode(RecordsLayout.place(DerivedColumn.GRAFTING_DAY), graftingDay(row));
    }
    ColumnTrack attempt = layout.track(DerivedColumn.GRAFT_ATTEMPT);
    if (attempt.wanted() && layout.track(REPLACES).present()) {
      row.setCode(
          RecordsLayout.place(DerivedColumn.GRAFT_ATTEMPT),
          attempt
              .levels()
              .code(row.text(REPLACES) == null ? DerivedColumn.FIRST : DerivedColumn.AGAIN));
    }
  }

  private void days(
      RecordRow row,
      DerivedColumn column,
      RecordColumn from,
      RecordColumn to,
      SheetReader sheet,
      RowReport report) {
    if (!row.has(from) || !row.has(to)) {
      return;
    }
    int place = RecordsLayout.place(column);
    double days = row.code(to) - (double) row.code(from);
    double given = row.number(place);
    if (!Double.isNaN(given) && given != days) {
      report.add(
          ProblemKind.CONTRADICTION,
          sheet.heading(place),
          () ->
              new ProblemText(
                  Plain.number(given),
                  Plain.number(days)
                      + ", the days from "
                      + sheet.heading(from)
                      + " to "
                      + sheet.heading(to),
                  "correct the dates or clear the days"));
    }
    row.setNumber(place, days);
  }

  private int pairing(RecordRow row) {
    int cultivar = row.code(CULTIVAR);
    int rootstock = row.code(ROOTSTOCK);
    long key = key(cultivar, rootstock);
    int code = pairings.get(key);
    if (code == UNKNOWN) {
      String name =
          pairingName(
              layout.track(CULTIVAR).levels().name(cultivar),
              layout.track(ROOTSTOCK).levels().name(rootstock));
      code = layout.track(DerivedColumn.PAIRING).levels().code(name);
      pairings.put(key, code);
    }
    return code;
  }

  /** Sheets of a single site often have no column for it: then the date alone is the day. */
  private int graftingDay(RecordRow row) {
    boolean placed = layout.track(SITE).present();
    int site = placed ? row.code(SITE) : 0;
    int day = row.code(GRAFT_DATE);
    long key = key(site, day);
    int code = days.get(key);
    if (code == UNKNOWN) {
      String name =
          (placed ? layout.track(SITE).levels().name(site) + " " : "") + DateRule.day(day);
      code = layout.track(DerivedColumn.GRAFTING_DAY).levels().code(name);
      days.put(key, code);
    }
    return code;
  }

  static String pairingName(String cultivar, String rootstock) {
    return cultivar + " × " + rootstock;
  }

  static long key(int one, int other) {
    return ((long) one << 32) | (other & 0xFFFFFFFFL);
  }
}
