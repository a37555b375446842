package org.taketally.cells;

import java.util.List;
import java.util.Optional;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;

/** Rows passing by while files are read. */
final class StreamedRows implements CountedRows<RecordRow> {

  private final RecordsLayout layout;

  StreamedRows(RecordsLayout layout) {
    this.layout = layout;
  }

  @Override
  public List<String> columns() {
    return layout.names();
  }

  @Override
  public Optional<ColumnCoder<RecordRow>> coder(String name) {
    int column = layout.indexOf(name);
    return column < 0 ? Optional.empty() : Optional.of(coder(column));
  }

  private ColumnCoder<RecordRow> coder(int column) {
    if (layout.coded(column)) {
      return layout.kind(column) == ColumnKind.DATE
          ? new DayCoder(layout, column)
          : new LevelCoder(layout, column);
    }
    return layout.kind(column) == ColumnKind.TEXT
        ? new ColumnCoder.TextCoder<>(row -> row.text(column))
        : new ColumnCoder.NumberCoder<>(row -> row.number(column));
  }

  @Override
  public boolean assessed(RecordRow row) {
    return row.assessed();
  }

  @Override
  public int grafts(RecordRow row) {
    return row.grafts();
  }

  @Override
  public int takes(RecordRow row) {
    return row.takes();
  }

  /** Names, which the records number already; of a column not ours, perhaps numbers. */
  private static final class LevelCoder extends ColumnCoder<RecordRow> {
    private final RecordsLayout layout;
    private final int column;
    private int highest = Factor.MISSING;

    LevelCoder(RecordsLayout layout, int column) {
      this.layout = layout;
      this.column = column;
    }

    @Override
    int code(RecordRow row) {
      int code = row.code(column);
      if (code == RecordRow.MISSING) {
        return Factor.MISSING;
      }
      highest = Math.max(highest, code);
      return code;
    }

    private boolean isNumber() {
      return layout.kind(column) == ColumnKind.NUMBER;
    }

    private double number(int code) {
      return layout.levelNumber(column, code) + 0.0; // -0 is 0
    }

    /** Numbers written in two ways, such as 20 and 20.0, are one. */
    @Override
    Optional<int[]> merged() {
      if (!isNumber()) {
        return Optional.empty();
      }
      Coding numbers = new Coding();
      int[] firstCode = new int[highest + 1];
      int[] same = new int[highest + 1];
      for (int code = 0, met = 0; code <= highest; code++) {
        int number = numbers.code(number(code));
        if (number == met) {
          firstCode[met++] = code;
        }
        same[code] = firstCode[number];
      }
      return Optional.of(same);
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      if (isNumber()) {
        cells.measure(place, name, this::number);
      } else {
        cells.factor(place, name, code -> layout.levelName(column, code));
      }
    }
  }

  /** Days, as levels. */
  private static final class DayCoder extends ColumnCoder<RecordRow> {
    private final RecordsLayout layout;
    private final int column;
    private final Coding coding = new Coding();

    DayCoder(RecordsLayout layout, int column) {
      this.layout = layout;
      this.column = column;
    }

    @Override
    int code(RecordRow row) {
      int day = row.code(column);
      return day == RecordRow.MISSING ? Factor.MISSING : coding.code((long) day);
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      cells.factor(place, name, code -> layout.levelName(column, (int) coding.value(code)));
    }
  }
}
