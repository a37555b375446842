package org.taketally.answers.survival;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import tech.tablesaw.api.Table;

/**
 * A row of graft records whose living grafts were counted on several days.
 *
 * @param record the row's name
 * @param levels its level of each factor it was recorded for, e.g. {@code rootstock}
 * @param grafts grafts made, at least 1
 * @param counts at least one, days rising
 */
public record CountedRow(
    String record, Map<String, String> levels, long grafts, List<Count> counts) {

  /**
   * One count.
   *
   * @param day days after grafting, 0 or more
   * @param alive grafts counted alive, 0 or more
   */
  public record Count(long day, long alive) {}

  public CountedRow {
    levels = Map.copyOf(levels);
    counts = List.copyOf(counts);
    if (counts.isEmpty()) {
      throw new IllegalArgumentException("record %s has no count".formatted(record));
    }
    long before = -1;
    for (Count count : counts) {
      if (count.day() <= before) {
        throw new IllegalArgumentException(
            "record %s: days of its counts must rise from 0, got %d after %d"
                .formatted(record, count.day(), before));
      }
      if (count.alive() < 0 || count.alive() > grafts) {
        throw new IllegalArgumentException(
            "record %s, day %d: alive must be 0 to %d (grafts), got %d"
                .formatted(record, count.day(), grafts, count.alive()));
      }
      before = count.day();
    }
  }

  /**
   * Rows of records with their counts.
   *
   * @param records the records
   * @param assessments counts that belong to them
   * @param factors columns to take levels from; those the records lack are passed over, and so is a
   *     level that was not recorded
   * @return one for each row that was counted, in the order of the rows
   */
  public static List<CountedRow> of(
      GraftRecords records, Assessments assessments, Collection<String> factors) {
    Table frame = records.frame();
    List<String> known = factors.stream().filter(frame::containsColumn).toList();
    return assessments.histories().stream()
        .map(
            history ->
                new CountedRow(
                    history.record(),
                    levels(frame, history.row(), known),
                    history.grafts(),
                    counts(history)))
        .toList();
  }

  private static Map<String, String> levels(Table frame, int row, List<String> factors) {
    Map<String, String> levels = new LinkedHashMap<>();
    for (String factor : factors) {
      if (!frame.column(factor).isMissing(row)) {
        levels.put(factor, frame.column(factor).getString(row));
      }
    }
    return levels;
  }

  private static List<Count> counts(Assessments.History history) {
    return IntStream.range(0, history.days().length)
        .mapToObj(k -> new Count(history.days()[k], history.alive()[k]))
        .toList();
  }

  /** Counted alive at the first count. */
  long early() {
    return counts.get(0).alive();
  }

  /** Counted alive at the last count. */
  long last() {
    return counts.get(counts.size() - 1).alive();
  }

  /**
   * Grafts that were alive at count {@code k}, seen or not: a graft counted alive later was alive
   * before.
   */
  long aliveAt(int k) {
    return counts.subList(k, counts.size()).stream().mapToLong(Count::alive).max().orElseThrow();
  }

  /**
   * Grafts seen alive by count {@code k} and alive then: one seen before and again later was
   * overlooked between.
   */
  long seenBy(int k) {
    long before = counts.subList(0, k + 1).stream().mapToLong(Count::alive).max().orElseThrow();
    return Math.min(before, aliveAt(k));
  }

  /**
   * Losses that late starters of the same row could hide: as many as were never seen alive; none of
   * a single graft.
   */
  long hiddenAtMost() {
    long most = aliveAt(0);
    return most == 0 ? 0 : grafts - most;
  }

  /** Days from the first count to count {@code k}. */
  long daysAfterFirst(int k) {
    return counts.get(k).day() - counts.get(0).day();
  }

  /** Whether it was counted again after the first time. */
  boolean isFollowed() {
    return counts.size() > 1;
  }
}
