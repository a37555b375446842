package org.taketally.records.sources;

import java.time.LocalDate;
import java.util.List;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * The rows of a table: its numbers and days are what they are, whatever the notation of a sheet.
 */
public final class TableSource implements RowSource {

  private final Table table;

  public TableSource(Table table) {
    this.table = table;
  }

  @Override
  public String name() {
    return table.name() == null || table.name().isBlank() ? "table" : table.name();
  }

  @Override
  public List<String> headings() {
    return List.copyOf(table.columnNames());
  }

  @Override
  public Rows open() {
    return new TableRows();
  }

  /** A walk over the table. */
  private final class TableRows implements Rows {
    private int row;

    @Override
    public RawRow next() {
      if (row == table.rowCount()) {
        return null;
      }
      String[] fields = new String[table.columnCount()];
      boolean[] exact = new boolean[fields.length];
      for (int i = 0; i < fields.length; i++) {
        Column<?> column = table.column(i);
        boolean missing = column.isMissing(row);
        exact[i] = column instanceof NumericColumn<?> && !missing;
        fields[i] = missing ? "" : text(column);
      }
      row++;
      return new RawRow(row, fields, exact);
    }

    private String text(Column<?> column) {
      if (column instanceof DateColumn days) {
        LocalDate day = days.get(row);
        return day.toString();
      }
      return column instanceof NumericColumn<?> numbers
          ? new java.math.BigDecimal(Double.toString(numbers.getDouble(row))).toPlainString()
          : column.getString(row);
    }

    @Override
    public void close() {}
  }
}
