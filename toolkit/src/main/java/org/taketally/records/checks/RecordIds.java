package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.RECORD;
import static org.taketally.records.columns.RecordColumn.REPLACES;
import static org.taketally.records.columns.RecordColumn.SEASON;

import it.unimi.dsi.fastutil.HashCommon;
import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import java.util.ArrayList;
import java.util.List;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.Places;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
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
  private final List<Replacement> replacements = new ArrayList<>();
  private final Places places;
  private long inHand;

  private record Replacement(Place place, String heading, String replaced) {}

  RecordIds(Places places) {
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
    }
    String replaced = row.text(REPLACES);
    if (replaced != null) {
      replacements.add(new Replacement(place, sheet.heading(REPLACES), replaced));
    }
  }

  /** Reports replaced records that aren't there in any season. */
  void close(int seasons, ProblemLog log) {
    for (Replacement one : replacements) {
      if (!met.containsKey(key(one.replaced(), RecordRow.MISSING)) && !any(one, seasons)) {
        log.add(
            ProblemKind.REPLACES_NOTHING,
            one.place(),
            one.heading(),
            () ->
                new ProblemText(
                    one.replaced(),
                    "a record among those read",
                    "correct the label, or read the file that has it too"));
      }
    }
  }

  private boolean any(Replacement one, int seasons) {
    for (int season = 0; season < seasons; season++) {
      if (met.containsKey(key(one.replaced(), season))) {
        return true;
      }
    }
    return false;
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
