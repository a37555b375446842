package org.taketally.publish;

import java.util.Optional;
import java.util.stream.DoubleStream;
import org.taketally.answers.Words;
import org.taketally.records.DerivedColumn;
import tech.tablesaw.api.Table;

/** How long after grafting the takes were counted: the middle nine tenths of the rows. */
final class AssessmentDays {

  private static final String COLUMN = DerivedColumn.DAYS_TO_ASSESSMENT.columnName();
  private static final double LOWER_SHARE = 0.05;
  private static final double UPPER_SHARE = 0.95;

  private final long[] days;

  AssessmentDays(Table frame) {
    this.days =
        frame.columnNames().contains(COLUMN)
            ? DoubleStream.of(frame.numberColumn(COLUMN).asDoubleArray())
                .filter(Double::isFinite)
                .mapToLong(Math::round)
                .sorted()
                .toArray()
            : new long[0];
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
