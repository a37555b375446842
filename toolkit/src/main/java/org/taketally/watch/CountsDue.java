package org.taketally.watch;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.DerivedColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Table;

/**
 * What is counted, what is due, and what isn't due yet.
 *
 * @param counted grafts counted on a stated day
 * @param due grafts not counted though as old, on the day of the last count, as past grafts were
 *     when counted
 * @param notYetDue grafts not counted and younger
 * @param ageUnknown grafts not counted whose day of grafting isn't recorded, or all of them where
 *     past records don't say when they were counted
 * @param usualDays days from grafting to the count, median of past grafts; empty if not recorded
 * @param asOf day of the last count
 */
public record CountsDue(
    long counted,
    long due,
    long notYetDue,
    long ageUnknown,
    OptionalInt usualDays,
    LocalDate asOf) {

  private static final String DAYS = DerivedColumn.DAYS_TO_ASSESSMENT.columnName();

  static CountsDue of(SeasonLots season, GraftRecords past) {
    LocalDate asOf =
        season.counted().stream().map(WatchedLot::counted).max(LocalDate::compareTo).orElseThrow();
    OptionalInt usual = usualDays(past.frame());
    long due = 0;
    long early = 0;
    long unknown = 0;
    for (SeasonLots.Waiting waiting : season.waiting()) {
      Optional<LocalDate> grafted = waiting.grafted();
      if (grafted.isEmpty() || usual.isEmpty()) {
        unknown += waiting.grafts();
      } else if (grafted.get().plusDays(usual.getAsInt()).isAfter(asOf)) {
        early += waiting.grafts();
      } else {
        due += waiting.grafts();
      }
    }
    return new CountsDue(season.grafts(), due, early, unknown, usual, asOf);
  }

  private static OptionalInt usualDays(Table past) {
    if (!past.containsColumn(DAYS) || !(past.column(DAYS) instanceof NumericColumn<?> days)) {
      return OptionalInt.empty();
    }
    int[] known =
        IntStream.range(0, days.size())
            .filter(row -> !days.isMissing(row))
            .mapToDouble(days::getDouble)
            .sorted()
            .mapToInt(x -> (int) Math.round(x))
            .toArray();
    return known.length == 0 ? OptionalInt.empty() : OptionalInt.of(known[known.length / 2]);
  }
}
