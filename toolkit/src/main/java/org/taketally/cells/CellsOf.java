package org.taketally.cells;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** Makes cells from records: one per distinct pattern of the wanted columns. */
public final class CellsOf {

  private CellsOf() {}

  /**
   * Cells of the assessed rows, by the wanted columns only.
   *
   * <p>A column of numbers becomes a {@link Measure}, any other a {@link Factor}. Levels are in the
   * order of {@link RecordColumn#allowed()}, then in natural alphabetical order. Cells are in the
   * order in which their patterns first occur.
   *
   * @param records the records
   * @param columns names of columns in the frame, derived ones included
   * @return the cells
   * @throws IllegalArgumentException if there is no such column, naming those there are
   */
  public static Cells records(GraftRecords records, Collection<String> columns) {
    Table frame = records.frame();
    List<String> wanted = List.copyOf(new LinkedHashSet<>(columns));
    for (String name : wanted) {
      if (!frame.columnNames().contains(name)) {
        throw new IllegalArgumentException(
            "no column \"%s\" in these records; there are %s".formatted(name, frame.columnNames()));
      }
    }
    IntColumn grafts = frame.intColumn("grafts");
    IntColumn takes = frame.intColumn("takes");
    Map<List<Object>, int[]> counts = new HashMap<>();
    List<List<Object>> patterns = new ArrayList<>();
    double logCoefficients = 0;
    for (int row = 0; row < frame.rowCount(); row++) {
      if (takes.isMissing(row)) {
        continue;
      }
      Object[] pattern = new Object[wanted.size()];
      for (int i = 0; i < pattern.length; i++) {
        pattern[i] = value(frame.column(wanted.get(i)), row);
      }
      List<Object> key = Arrays.asList(pattern);
      int[] count = counts.get(key);
      if (count == null) {
        count = new int[2];
        counts.put(key, count);
        patterns.add(key);
      }
      int made = grafts.getInt(row);
      count[0] = Math.addExact(count[0], made);
      count[1] += takes.getInt(row);
      logCoefficients +=
          made == 1 ? 0 : CombinatoricsUtils.binomialCoefficientLog(made, takes.getInt(row));
    }
    int[] cellGrafts = patterns.stream().mapToInt(p -> counts.get(p)[0]).toArray();
    int[] cellTakes = patterns.stream().mapToInt(p -> counts.get(p)[1]).toArray();
    List<Factor> factors = new ArrayList<>();
    List<Measure> measures = new ArrayList<>();
    for (int i = 0; i < wanted.size(); i++) {
      int place = i;
      List<Object> values = patterns.stream().map(p -> p.get(place)).toList();
      if (frame.column(wanted.get(i)) instanceof NumericColumn) {
        measures.add(
            new Measure(wanted.get(i), values.stream().mapToDouble(v -> (Double) v).toArray()));
      } else {
        factors.add(factor(wanted.get(i), values));
      }
    }
    return new Cells(
        factors, measures, cellGrafts, cellTakes, logCoefficients, records.provenance());
  }

  private static Object value(Column<?> column, int row) {
    if (column instanceof NumericColumn<?> numbers) {
      return numbers.getDouble(row);
    }
    return column.isMissing(row) ? "" : column.getString(row);
  }

  private static Factor factor(String name, List<Object> values) {
    List<String> levels =
        values.stream()
            .map(Object::toString)
            .filter(level -> !level.isEmpty())
            .distinct()
            .sorted(LevelOrder.of(name))
            .toList();
    Map<String, Integer> codes = new HashMap<>();
    for (String level : levels) {
      codes.put(level, codes.size());
    }
    return new Factor(
        name,
        levels,
        values.stream()
            .mapToInt(v -> Optional.ofNullable(codes.get(v.toString())).orElse(Factor.MISSING))
            .toArray());
  }
}
