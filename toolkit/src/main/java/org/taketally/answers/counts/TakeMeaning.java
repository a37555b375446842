package org.taketally.answers.counts;

import java.util.Optional;
import java.util.stream.DoubleStream;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.DerivedColumn;
import tech.tablesaw.api.Table;

/**
 * What a take is in some records: alive when counted, so many days after grafting. Early take,
 * final take and late loss are told apart by repeated counts only.
 *
 * @param days how long after grafting takes were counted, the middle nine tenths of the rows; empty
 *     if no row has both dates
 */
public record TakeMeaning(Optional<Days> days) {

  private static final String COLUMN = DerivedColumn.DAYS_TO_ASSESSMENT.columnName();
  private static final double LOWER_SHARE = 0.05;
  private static final double UPPER_SHARE = 0.95;

  /**
   * Days after grafting.
   *
   * @param from few rows were counted earlier
   * @param to few rows were counted later; {@code from} or more
   */
  public record Days(long from, long to) {}

  /**
   * Takes of the records' own column.
   *
   * @param records as read
   * @return how long after grafting they were counted
   */
  public static TakeMeaning of(GraftRecords records) {
    Table frame = records.frame();
    if (!frame.columnNames().contains(COLUMN)) {
      return new TakeMeaning(Optional.empty());
    }
    long[] days =
        DoubleStream.of(frame.numberColumn(COLUMN).asDoubleArray())
            .filter(Double::isFinite)
            .mapToLong(Math::round)
            .sorted()
            .toArray();
    return new TakeMeaning(
        days.length == 0
            ? Optional.empty()
            : Optional.of(new Days(at(days, LOWER_SHARE), at(days, UPPER_SHARE))));
  }

  private static long at(long[] days, double share) {
    return days[(int) Math.round(share * (days.length - 1))];
  }
}
