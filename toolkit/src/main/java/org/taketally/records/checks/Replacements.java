package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.GRAFT_DATE;
import static org.taketally.records.columns.RecordColumn.REPLACES;

import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import it.unimi.dsi.fastutil.longs.Long2LongOpenHashMap;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;

/**
 * Compares grafts made in place of others with those: were they there, made before, and did as many
 * fail? Of a label that several seasons have it asks only whether it is there.
 */
final class Replacements {

  private static final int UNKNOWN = -1;

  private final RecordsLayout layout;
  private final List<Replacement> replacements = new ArrayList<>();
  private final Long2LongOpenHashMap dayAndFailed = new Long2LongOpenHashMap();
  private final Long2IntOpenHashMap replaced = new Long2IntOpenHashMap();

  private record Replacement(Place place, String heading, String label, int day, int grafts) {}

  Replacements(RecordsLayout layout) {
    this.layout = layout;
  }

  /** Remembers what a replacement is compared with, if any row may be one. */
  void met(long record, RecordRow row) {
    if (layout.track(REPLACES).present()) {
      int failed = row.assessed() ? row.grafts() - row.takes() : UNKNOWN;
      dayAndFailed.put(record, Derivation.key(row.code(GRAFT_DATE), failed));
    }
  }

  void add(RecordRow row, String heading, Place place) {
    replacements.add(
        new Replacement(place, heading, row.text(REPLACES), row.code(GRAFT_DATE), row.grafts()));
  }

  /**
   * Reports what doesn't fit.
   *
   * @param records numbers of the records that have a label
   */
  void close(Function<String, long[]> records, ProblemLog log) {
    for (Replacement one : replacements) {
      long[] found = records.apply(one.label());
      if (found.length == 0) {
        add(
            log,
            ProblemKind.REPLACES_NOTHING,
            one,
            "a record among those read",
            "correct the label, or read the file that has it too");
      } else if (found.length == 1) {
        compare(one, found[0], log);
      }
    }
  }

  private void compare(Replacement one, long record, ProblemLog log) {
    int day = (int) (dayAndFailed.get(record) >>> 32);
    int failed = (int) dayAndFailed.get(record);
    int made = replaced.addTo(record, one.grafts()) + one.grafts();
    if (day != RecordRow.MISSING && one.day() != RecordRow.MISSING && day > one.day()) {
      add(
          log,
          ProblemKind.REPLACES_LATER,
          one,
          "a record grafted by %s, like this row; it was grafted on %s"
              .formatted(DateRule.day(one.day()), DateRule.day(day)),
          "correct the label or one of the dates");
    }
    if (failed != UNKNOWN && made > failed) {
      add(
          log,
          ProblemKind.REPLACES_TAKEN,
          one,
          failed == 0
              ? "a record with a graft that failed; all of this one took"
              : "a record with as many failures; %,d failed and %,d were made in their place"
                  .formatted(failed, made),
          "correct the label or the takes; if a graft died after it was counted, nothing to do");
    }
  }

  private static void add(
      ProblemLog log, ProblemKind kind, Replacement one, String expected, String remedy) {
    log.add(kind, one.place(), one.heading(), () -> new ProblemText(one.label(), expected, remedy));
  }
}
