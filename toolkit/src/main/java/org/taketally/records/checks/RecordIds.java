package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.RECORD;
import static org.taketally.records.columns.RecordColumn.REPLACES;
import static org.taketally.records.columns.RecordColumn.SEASON;

import it.unimi.dsi.fastutil.HashCommon;
import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import java.util.stream.IntStream;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.Places;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/**
 * Keeps track of the records met, so that none is counted twice and none replaces nothing.
 *
 * <p>A record is known by a 64-bit number made from its label and season; that two of ten million
 * records get the same number has a chance of about 3 in a million.
 */
final class RecordIds {

  private static final int NONE = -1;
  private static final long FACTOR = 0x9E3779B97F4A7C15L;

  private final Long2IntOpenHashMap met = new Long2IntOpenHashMap();
  private final Replacements replacements;
  private final Places places;
  private long inHand;

  RecordIds(RecordsLayout layout, Places places) {
    this.replacements = new Replacements(layout);
    this.places = places;
    met.defaultReturnValue(NONE);
  }

  /** Reports a record met before, or one that replaces itself. */
  void check(RecordRow row, SheetReader sheet, RowReport report) {
    String record = row.text(RECORD);
    if (record == null) {
      return;
    }
    inHand = key(record, row.code(SEASON));
    int first = met.get(inHand);
    if (first != NONE) {
      report.add(
          ProblemKind.DUPLICATE_RECORD,
          sheet.heading(RECORD),
          () ->
              new ProblemText(
                  record,
                  "each record once in a season; it was read before at " + places.unpack(first),
                  "take out one of the two, or give the grafts labels of their own"));
    } else if (record.equals(row.text(REPLACES))) {
      report.add(
          ProblemKind.CONTRADICTION,
          sheet.heading(REPLACES),
          () -> new ProblemText(record, "another record than its own", "correct or clear it"));
    }
  }

  /** Remembers a kept row, the one checked last. */
  void keep(RecordRow row, SheetReader sheet, Place place) {
    String record = row.text(RECORD);
    if (record != null) {
      met.put(inHand, places.pack(place.line()));
      replacements.met(inHand, row);
    }
    if (row.text(REPLACES) != null) {
      replacements.add(row, sheet.heading(REPLACES), place);
    }
  }

  /** Reports replacements that don't fit the records of any season. */
  void close(int seasons, ProblemLog log) {
    replacements.close(label -> keys(label, seasons), log);
  }

  /** The numbers by which records of a label are known, one for each season that has it. */
  private long[] keys(String label, int seasons) {
    return IntStream.concat(IntStream.of(RecordRow.MISSING), IntStream.range(0, seasons))
        .mapToLong(season -> key(label, season))
        .filter(met::containsKey)
        .toArray();
  }

  private static long key(String record, int season) {
    long hash = season * FACTOR;
    for (int i = 0; i < record.length(); i++) {
      hash = (hash ^ record.charAt(i)) * FACTOR;
      hash ^= hash >>> 29;
    }
    return HashCommon.murmurHash3(hash);
  }
}
