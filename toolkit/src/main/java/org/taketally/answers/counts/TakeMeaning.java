package org.taketally.answers.counts;

import java.util.Optional;
import java.util.stream.DoubleStream;
import org.taketally.answers.Words;
import org.taketally.answers.survival.LateLoss;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.DerivedColumn;
import tech.tablesaw.api.Table;

/**
 * What a take is in some records: alive when counted, so many days after grafting. Early take,
 * final take and late loss are told apart by repeated counts only: {@link LateLoss}.
 */
public final class TakeMeaning {

  private static final String COLUMN = DerivedColumn.DAYS_TO_ASSESSMENT.columnName();
  private static final double LOWER_SHARE = 0.05;
  private static final double UPPER_SHARE = 0.95;

  private final long[] days;

  private TakeMeaning(Table frame) {
    this.days =
        frame.columnNames().contains(COLUMN)
            ? DoubleStream.of(frame.numberColumn(COLUMN).asDoubleArray())
                .filter(Double::isFinite)
                .mapToLong(Math::round)
                .sorted()
                .toArray()
            : new long[0];
  }

  /**
   * Takes of the records' own column, and how long after grafting they were counted: the middle
   * nine tenths of the rows.
   *
   * @param records as read
   * @return one sentence
   */
  public static String of(GraftRecords records) {
    return "A graft has taken when it was alive when counted%s."
        .formatted(
            new TakeMeaning(records.frame())
                .words()
                .map(words -> ", " + words)
                .orElse(", on the day it was last counted"));
  }

  /** In words; empty if no row has both dates. */
  private Optional<String> words() {
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
