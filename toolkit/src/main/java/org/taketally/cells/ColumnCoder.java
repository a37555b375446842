package org.taketally.cells;

import it.unimi.dsi.fastutil.objects.Object2IntOpenHashMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;

/**
 * Codes the values of one column while rows pass by.
 *
 * @param <R> one row
 */
abstract class ColumnCoder<R> {

  /** The code of the next row, {@link Factor#MISSING} if the value isn't recorded. */
  abstract int code(R row);

  /** The code of the next row, which is in no cell as its result isn't known. */
  int unassessedCode(R row) {
    return code(row);
  }

  /** Adds the column to the cells, when all rows have passed. */
  abstract void addTo(CellColumns cells, int place, String name);

  /** Code to code of an equal value, where unlike codes may mean one value. */
  Optional<int[]> merged() {
    return Optional.empty();
  }

  /** Numbers; NaN if not recorded. */
  static final class NumberCoder<R> extends ColumnCoder<R> {
    private final ToDoubleFunction<R> number;
    private final Coding coding = new Coding();

    NumberCoder(ToDoubleFunction<R> number) {
      this.number = number;
    }

    @Override
    int code(R row) {
      return coding.code(number.applyAsDouble(row));
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      cells.measure(place, name, coding::number);
    }
  }

  /** TextCoder, as levels; null if not recorded. */
  static final class TextCoder<R> extends ColumnCoder<R> {
    private final Function<R, String> text;
    private final Object2IntOpenHashMap<String> codes = new Object2IntOpenHashMap<>();
    private final List<String> names = new ArrayList<>();

    TextCoder(Function<R, String> text) {
      this.text = text;
      codes.defaultReturnValue(Factor.MISSING);
    }

    @Override
    int code(R row) {
      String name = text.apply(row);
      if (name == null) {
        return Factor.MISSING;
      }
      int code = codes.getInt(name);
      if (code == Factor.MISSING) {
        code = names.size();
        codes.put(name, code);
        names.add(name);
      }
      return code;
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      cells.factor(place, name, names::get);
    }
  }

  /** Rows of several grafts, each a level. */
  static final class BatchCoder<R> extends ColumnCoder<R> {
    private final ToIntFunction<R> grafts;
    private final RowNumbers rows = new RowNumbers();

    BatchCoder(ToIntFunction<R> grafts) {
      this.grafts = grafts;
    }

    @Override
    int code(R row) {
      return rows.next(grafts.applyAsInt(row), true);
    }

    @Override
    int unassessedCode(R row) {
      return rows.next(grafts.applyAsInt(row), false);
    }

    @Override
    void addTo(CellColumns cells, int place, String name) {
      cells.rows(place, rows);
    }
  }
}
