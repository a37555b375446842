package org.taketally.publish;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.Words;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.Table;

/** How long after grafting the takes were counted: the middle nine tenths of the rows. */
final class AssessmentDays {

  private static final double LOWER_SHARE = 0.05;
  private static final double UPPER_SHARE = 0.95;

  private final long[] days;

  AssessmentDays(Table frame) {
    this.days =
        frame.containsColumn("graft_date") && frame.containsColumn("assessed_date")
            ? days(frame.dateColumn("graft_date"), frame.dateColumn("assessed_date"))
            : new long[0];
  }

  private static long[] days(DateColumn grafted, DateColumn assessed) {
    long[] days =
        IntStream.range(0, grafted.size())
            .filter(row -> !grafted.isMissing(row) && !assessed.isMissing(row))
            .mapToLong(row -> assessed.get(row).toEpochDay() - grafted.get(row).toEpochDay())
            .toArray();
    Arrays.sort(days);
    return days;
  }

  /** In words; empty if no row has both dates. */
  Optional<String> words() {
    if (days.length == 0) {
      return Optional.empty();
    }
    long low = at(LOWER_SHARE);
    long high = at(UPPER_SHARE);
    return Optional.of(
        low == high
            ? Words.count(low, "day") + " after grafting"
            : "mostly %d to %d days after grafting".formatted(low, high));
  }

  private long at(double share) {
    return days[(int) Math.round(share * (days.length - 1))];
  }
}
