package org.taketally.watch;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * Rows of a season's records as lots: those counted, and those not counted yet, which are no
 * failures.
 *
 * @param counted lots counted on a stated day
 * @param values what each counted lot's row says, by column, in the same order
 * @param waiting rows without a result yet
 * @param withoutDay grafts counted, but on no stated day: they can't be put in order and are left
 *     out
 */
public record SeasonLots(
    List<WatchedLot> counted,
    List<Map<String, String>> values,
    List<Waiting> waiting,
    long withoutDay) {

  /** Columns that are no cause: labels, results, and what is made of others. */
  private static final Set<String> NO_CAUSE =
      Set.of(
          RecordColumn.RECORD.columnName(),
          RecordColumn.SEASON.columnName(),
          DerivedColumn.PAIRING.columnName(),
          RecordColumn.NOTES.columnName(),
          RecordColumn.OUTCOME.columnName(),
          RecordColumn.FAILURE_CAUSE.columnName(),
          RecordColumn.REPLACES.columnName(),
          RecordColumn.GRAFTS.columnName(),
          RecordColumn.TAKES.columnName(),
          RecordColumn.ASSESSED_DATE.columnName(),
          RecordColumn.GRAFT_DATE.columnName(),
          RecordColumn.BUDWOOD_CUT_DATE.columnName());

  /** A column of more different texts than this share of the rows is a label, not a group. */
  private static final double LABELS = 0.5;

  public SeasonLots {
    counted = List.copyOf(counted);
    values = List.copyOf(values);
    waiting = List.copyOf(waiting);
  }

  /**
   * Grafts without a result yet.
   *
   * @param grafted day they were made; empty if not recorded
   * @param grafts 1 or more
   */
  public record Waiting(Optional<LocalDate> grafted, int grafts) {}

  /**
   * Lots of some records.
   *
   * @param records of one season
   * @return the lots
   */
  public static SeasonLots of(GraftRecords records) {
    Table frame = records.frame();
    List<String> causes = causes(frame);
    List<WatchedLot> counted = new ArrayList<>();
    List<Map<String, String>> values = new ArrayList<>();
    List<Waiting> waiting = new ArrayList<>();
    long withoutDay = 0;
    for (int row = 0; row < frame.rowCount(); row++) {
      int grafts = frame.intColumn(RecordColumn.GRAFTS.columnName()).getInt(row);
      Optional<LocalDate> day = day(frame, RecordColumn.ASSESSED_DATE.columnName(), row);
      if (frame.intColumn(RecordColumn.TAKES.columnName()).isMissing(row)) {
        waiting.add(new Waiting(day(frame, RecordColumn.GRAFT_DATE.columnName(), row), grafts));
      } else if (day.isEmpty()) {
        withoutDay += grafts;
      } else {
        Map<String, String> said = values(frame, row);
        counted.add(
            new WatchedLot(
                said.getOrDefault(RecordColumn.RECORD.columnName(), "row " + (row + 1)),
                day.get(),
                grafts,
                frame.intColumn(RecordColumn.TAKES.columnName()).getInt(row),
                groups(frame, row, said, causes)));
        values.add(said);
      }
    }
    return new SeasonLots(counted, values, waiting, withoutDay);
  }

  private static List<String> causes(Table frame) {
    return frame.columns().stream()
        .filter(column -> !(column instanceof NumericColumn<?>) && !(column instanceof DateColumn))
        .filter(column -> !NO_CAUSE.contains(column.name()))
        .filter(SeasonLots::groupsRows)
        .map(Column::name)
        .toList();
  }

  private static boolean groupsRows(Column<?> column) {
    Set<String> levels = new LinkedHashSet<>();
    for (int row = 0; row < column.size(); row++) {
      if (!column.isMissing(row)) {
        levels.add(column.getString(row));
      }
    }
    return levels.size() >= 2 && levels.size() <= LABELS * column.size();
  }

  private static Map<String, String> values(Table frame, int row) {
    Map<String, String> values = new LinkedHashMap<>();
    for (Column<?> column : frame.columns()) {
      if (!column.isMissing(row)) {
        values.put(
            column.name(),
            column instanceof NumericColumn<?> number
                ? Double.toString(number.getDouble(row))
                : column.getString(row));
      }
    }
    return values;
  }

  private static Map<String, String> groups(
      Table frame, int row, Map<String, String> said, List<String> causes) {
    Map<String, String> groups = new LinkedHashMap<>();
    day(frame, RecordColumn.GRAFT_DATE.columnName(), row)
        .ifPresent(
            day ->
                groups.put(
                    "grafting_week", day.minusDays(day.getDayOfWeek().getValue() - 1L).toString()));
    causes.forEach(
        column -> Optional.ofNullable(said.get(column)).ifPresent(v -> groups.put(column, v)));
    return groups;
  }

  private static Optional<LocalDate> day(Table frame, String column, int row) {
    return frame.containsColumn(column)
            && frame.column(column) instanceof DateColumn days
            && !days.isMissing(row)
        ? Optional.of(days.get(row))
        : Optional.empty();
  }

  /**
   * Grafts counted on a stated day.
   *
   * @return 0 or more
   */
  public long grafts() {
    return counted.stream().mapToLong(WatchedLot::grafts).sum();
  }

  /**
   * Grafts without a result yet.
   *
   * @return 0 or more
   */
  public long notCounted() {
    return waiting.stream().mapToLong(Waiting::grafts).sum();
  }

  /**
   * The columns causes are looked for in.
   *
   * @return names, in the order of the sheet
   */
  public List<String> columns() {
    return counted.stream().flatMap(lot -> lot.groups().keySet().stream()).distinct().toList();
  }

  @Override
  public String toString() {
    return "SeasonLots[%d counted, %d grafts not counted, %s]"
        .formatted(counted.size(), notCounted(), Arrays.toString(columns().toArray()));
  }
}
