package org.taketally.records.rows;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.RecordColumn;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;
import tech.tablesaw.columns.numbers.IntColumnType;

/** Collects rows into a table. */
public final class FrameBuilder implements RowVisitor {

  private static final int MISSING_COUNT = IntColumnType.missingValueIndicator();

  private final List<Collected> columns = new ArrayList<>();
  private final IntArrayList grafts = new IntArrayList();
  private final IntArrayList takes = new IntArrayList();
  private RecordsLayout layout;

  /** The values of one column so far, in the list that suits its kind. */
  private record Collected(
      int column, IntArrayList codes, DoubleArrayList numbers, List<String> texts) {}

  @Override
  public void begin(RecordsLayout theLayout) {
    layout = theLayout;
    for (String name : layout.names()) {
      int column = layout.indexOf(name);
      if (layout.kind(column) != ColumnKind.COUNT) {
        columns.add(
            new Collected(column, new IntArrayList(), new DoubleArrayList(), new ArrayList<>()));
      }
    }
  }

  @Override
  public void row(RecordRow row) {
    for (Collected one : columns) {
      if (layout.coded(one.column())) {
        one.codes().add(row.code(one.column()));
      } else if (layout.kind(one.column()) == ColumnKind.NUMBER) {
        one.numbers().add(row.number(one.column()));
      } else {
        one.texts().add(row.text(one.column()));
      }
    }
    grafts.add(row.grafts());
    takes.add(row.assessed() ? row.takes() : MISSING_COUNT);
  }

  public Table table() {
    Table table = Table.create("records");
    columns.forEach(one -> table.addColumns(column(one)));
    table.addColumns(
        IntColumn.create(RecordColumn.GRAFTS.columnName(), grafts.toIntArray()),
        IntColumn.create(RecordColumn.TAKES.columnName(), takes.toIntArray()));
    return table;
  }

  private Column<?> column(Collected one) {
    String name = layout.track(one.column()).name();
    return switch (layout.kind(one.column())) {
      case TEXT -> StringColumn.create(name, one.texts());
      case LEVELS -> names(name, one);
      case DATE -> days(name, one.codes());
      case NUMBER, COUNT ->
          layout.coded(one.column())
              ? levelNumbers(name, one)
              : DoubleColumn.create(name, one.numbers().toDoubleArray());
    };
  }

  private StringColumn names(String name, Collected one) {
    StringColumn names = StringColumn.create(name);
    for (int code : one.codes()) {
      if (code == RecordRow.MISSING) {
        names.appendMissing();
      } else {
        names.append(layout.levelName(one.column(), code));
      }
    }
    return names;
  }

  private static DateColumn days(String name, IntArrayList codes) {
    DateColumn days = DateColumn.create(name);
    for (int code : codes) {
      if (code == RecordRow.MISSING) {
        days.appendMissing();
      } else {
        days.append(LocalDate.ofEpochDay(code));
      }
    }
    return days;
  }

  private DoubleColumn levelNumbers(String name, Collected one) {
    DoubleColumn numbers = DoubleColumn.create(name);
    for (int code : one.codes()) {
      numbers.append(
          code == RecordRow.MISSING ? Double.NaN : layout.levelNumber(one.column(), code));
    }
    return numbers;
  }
}
