package org.taketally.records.checks;

import it.unimi.dsi.fastutil.HashCommon;
import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.Places;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/** Notices batches without a label that are the same in every column as one before. */
final class SameBatch {

  private static final int NONE = -1;

  private final Long2IntOpenHashMap met = new Long2IntOpenHashMap();
  private final Places places;

  SameBatch(Places places) {
    this.places = places;
    met.defaultReturnValue(NONE);
  }

  void keep(RecordRow row, SheetReader sheet, RowReport report) {
    if (row.grafts() == 1 || row.text(RecordColumn.RECORD) != null) {
      return;
    }
    long key = key(row);
    int first = met.putIfAbsent(key, places.pack(report.place().line()));
    if (first != NONE) {
      report.add(
          ProblemKind.SAME_ROW_TWICE,
          sheet.heading(RecordColumn.GRAFTS),
          () ->
              new ProblemText(
                  row.takes() + " of " + row.grafts(),
                  "a batch that differs from that at " + places.unpack(first) + " in some column",
                  "take it out if it was entered twice; labels under record would tell"));
    }
  }

  private static long key(RecordRow row) {
    long hash = row.grafts() * 31L + row.takes();
    for (RecordColumn column : RecordColumn.values()) {
      hash = HashCommon.murmurHash3(hash + row.code(column));
      hash = HashCommon.murmurHash3(hash + Double.doubleToLongBits(row.number(column)));
      String text = row.text(column);
      hash += text == null ? 0 : text.hashCode();
    }
    return hash;
  }
}
