package org.taketally.cells;

import it.unimi.dsi.fastutil.objects.Object2IntOpenHashMap;
import java.util.ArrayList;
import java.util.List;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;

/** Codes the values of one column while rows pass by. */
abstract class RowCoder {

  /** The coder that suits a column. */
  static RowCoder of(RecordsLayout layout, int column) {
    if (!layout.coded(column)) {
      return layout.kind(column) == ColumnKind.TEXT ? new Texts(column) : new Numbers(column);
    }
    return layout.kind(column) == ColumnKind.DATE
        ? new Days(layout, column)
        : new Levels(layout, column);
  }

  /** The code of a row, {@link Factor#MISSING} if the value isn't recorded. */
  abstract int code(RecordRow row);

  /** Adds the column to the cells, when all rows have passed. */
  abstract void addTo(CellColumns cells, int place, String name);

  /** Passes a row over that isn't counted. */
  void skip() {}

  /** Code to code of an equal value, where unlike codes may mean one value; else null. */
  int[] merged() {
    return null;
  }

  /** Names, which the records number already; of a column not ours, perhaps numbers. */
  private static final class Levels extends RowCoder {
    private final RecordsLayout layout;
    private final int column;
    private int highest = Factor.MISSING;

    Levels(RecordsLayout layout, int column) {
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

    /** Numbers written in two ways, such as 20 and 20.0, are one. */
    @Override
    int[] merged() {
      if (!isNumber()) {
        return null;
      }
      Coding numbers = new Coding();
      int[] firstCode = new int[highest + 1];
      int[] same = new int[highest + 1];
      for (int code = 0, met = 0; code <= highest; code++) {
        int number = numbers.code(layout.levelNumber(column, code));
        if (number == met) {
          firstCode[met++] = code;
        }
        same[code] = firstCode[number];
      }
      return same;
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      if (isNumber()) {
        cells.measure(place, name, code -> layout.levelNumber(column, code));
      } else {
        cells.factor(place, name, code -> layout.levelName(column, code));
      }
    }
  }

  /** Rows of several grafts, each a level. */
  static final class Rows extends RowCoder {
    private final RowNumbers rows = new RowNumbers();

    @Override
    int code(RecordRow row) {
      return rows.next(row.grafts(), true);
    }

    @Override
    void skip() {
      rows.next(0, false);
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      cells.rows(place, rows);
    }
  }

  /** Days, as levels. */
  private static final class Days extends RowCoder {
    private final RecordsLayout layout;
    private final int column;
    private final Coding coding = new Coding();

    Days(RecordsLayout layout, int column) {
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

  /** Numbers. */
  private static final class Numbers extends RowCoder {
    private final int column;
    private final Coding coding = new Coding();

    Numbers(int column) {
      this.column = column;
    }

    @Override
    int code(RecordRow row) {
      return coding.code(row.number(column));
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      cells.measure(place, name, coding::number);
    }
  }

  /** Free text, as levels. */
  private static final class Texts extends RowCoder {
    private final int column;
    private final Object2IntOpenHashMap<String> codes = new Object2IntOpenHashMap<>();
    private final List<String> names = new ArrayList<>();

    Texts(int column) {
      this.column = column;
      codes.defaultReturnValue(Factor.MISSING);
    }

    @Override
    int code(RecordRow row) {
      String text = row.text(column);
      if (text == null) {
        return Factor.MISSING;
      }
      int code = codes.getInt(text);
      if (code == Factor.MISSING) {
        code = names.size();
        codes.put(text, code);
        names.add(text);
      }
      return code;
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      cells.factor(place, name, names::get);
    }
  }
}
