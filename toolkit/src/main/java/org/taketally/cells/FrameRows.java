package org.taketally.cells;

import java.util.List;
import java.util.Optional;
import org.taketally.records.columns.RecordColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Row;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** The rows of a frame. */
final class FrameRows implements CountedRows<Row> {

  private final Table frame;
  private final IntColumn grafts;
  private final IntColumn takes;

  FrameRows(Table frame) {
    this.frame = frame;
    this.grafts = frame.intColumn(RecordColumn.GRAFTS.columnName());
    this.takes = frame.intColumn(RecordColumn.TAKES.columnName());
  }

  @Override
  public List<String> columns() {
    return frame.columnNames();
  }

  @Override
  public Optional<ColumnCoder<Row>> coder(String name) {
    return frame.containsColumn(name) ? Optional.of(coder(frame.column(name))) : Optional.empty();
  }

  private static ColumnCoder<Row> coder(Column<?> column) {
    return column instanceof NumericColumn<?> numbers
        ? new ColumnCoder.NumberCoder<>(row -> numbers.getDouble(row.getRowNumber()))
        : new ColumnCoder.TextCoder<>(row -> text(column, row.getRowNumber()));
  }

  private static String text(Column<?> column, int row) {
    return column.isMissing(row) ? null : column.getString(row);
  }

  @Override
  public boolean assessed(Row row) {
    return !takes.isMissing(row.getRowNumber());
  }

  @Override
  public int grafts(Row row) {
    return grafts.getInt(row.getRowNumber());
  }

  @Override
  public int takes(Row row) {
    return takes.getInt(row.getRowNumber());
  }
}
