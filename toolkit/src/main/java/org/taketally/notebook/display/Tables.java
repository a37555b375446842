package org.taketally.notebook.display;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** Tablesaw tables as grids: the first rows, the last, types and counts. */
final class Tables {

  private static final int ALL_UP_TO = 25;
  private static final int FIRST = 15;
  private static final int LAST = 5;

  private static final Map<ColumnType, String> KINDS =
      Map.of(
          ColumnType.STRING, "text",
          ColumnType.INTEGER, "whole number",
          ColumnType.LONG, "whole number",
          ColumnType.SHORT, "whole number",
          ColumnType.DOUBLE, "number",
          ColumnType.FLOAT, "number",
          ColumnType.BOOLEAN, "yes or no",
          ColumnType.LOCAL_DATE, "date");

  private Tables() {}

  static Grid grid(Table table) {
    return grid(table, table.name() == null ? "" : table.name());
  }

  static Grid grid(Table table, String name) {
    int count = table.rowCount();
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      if (count <= ALL_UP_TO || i < FIRST || i >= count - LAST) {
        rows.add(row(table, i));
      } else if (i == FIRST) {
        rows.add(null);
      }
    }
    return new Grid(
        caption(name, count, table.columnCount()), table.columnNames(), kinds(table), rows);
  }

  private static String caption(String name, int rows, int columns) {
    String size =
        "%,d %s, %,d %s"
            .formatted(
                rows, rows == 1 ? "row" : "rows", columns, columns == 1 ? "column" : "columns");
    return name.isBlank() ? size : name + ": " + size;
  }

  private static List<String> row(Table table, int index) {
    List<String> row = new ArrayList<>();
    for (Column<?> column : table.columns()) {
      row.add(column.isMissing(index) ? "" : value(column, index));
    }
    return row;
  }

  /** Numbers that were worked out have more digits than anyone reads. */
  private static String value(Column<?> column, int index) {
    return column.type() == ColumnType.DOUBLE || column.type() == ColumnType.FLOAT
        ? Brief.number(((Number) column.get(index)).doubleValue())
        : column.getString(index);
  }

  private static List<String> kinds(Table table) {
    List<String> kinds = new ArrayList<>();
    for (Column<?> column : table.columns()) {
      String kind = KINDS.getOrDefault(column.type(), "");
      int missing = column.countMissing();
      kinds.add(missing == 0 ? kind : kind + ", %,d missing".formatted(missing));
    }
    return kinds;
  }
}
