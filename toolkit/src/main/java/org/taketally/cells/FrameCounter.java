package org.taketally.cells;

import it.unimi.dsi.fastutil.objects.Object2IntOpenHashMap;
import java.util.ArrayList;
import java.util.List;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Provenance;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** Counts the rows of a frame into cells. */
final class FrameCounter {

  private final Table frame;
  private final List<String> wanted;
  private final int[][] codes;
  private final List<List<String>> names = new ArrayList<>();
  private final Coding[] numbers;

  FrameCounter(Table frame, List<String> wanted) {
    this.frame = frame;
    this.wanted = wanted;
    this.codes = new int[wanted.size()][];
    this.numbers = new Coding[wanted.size()];
    for (int i = 0; i < codes.length; i++) {
      names.add(new ArrayList<>());
      if (isRow(i)) {
        continue;
      }
      Column<?> column = frame.column(wanted.get(i));
      codes[i] = column instanceof NumericColumn<?> n ? numbers(i, n) : names(i, column);
    }
  }

  /** Whether rows are to be told apart by number, not by a column of that name. */
  private boolean isRow(int i) {
    return wanted.get(i).equals(Cells.BATCH_ROW) && !frame.containsColumn(Cells.BATCH_ROW);
  }

  private int[] numbers(int i, NumericColumn<?> column) {
    numbers[i] = new Coding();
    int[] coded = new int[column.size()];
    for (int row = 0; row < coded.length; row++) {
      coded[row] = numbers[i].code(column.getDouble(row));
    }
    return coded;
  }

  private int[] names(int i, Column<?> column) {
    Object2IntOpenHashMap<String> known = new Object2IntOpenHashMap<>();
    known.defaultReturnValue(Factor.MISSING);
    int[] coded = new int[column.size()];
    for (int row = 0; row < coded.length; row++) {
      coded[row] = Factor.MISSING;
      if (!column.isMissing(row)) {
        String name = column.getString(row);
        coded[row] = known.getInt(name);
        if (coded[row] == Factor.MISSING) {
          coded[row] = names.get(i).size();
          known.put(name, coded[row]);
          names.get(i).add(name);
        }
      }
    }
    return coded;
  }

  Cells cells(Provenance provenance) {
    PatternCounts counts = new PatternCounts(wanted.size());
    IntColumn grafts = frame.intColumn(RecordColumn.GRAFTS.columnName());
    IntColumn takes = frame.intColumn(RecordColumn.TAKES.columnName());
    int[] pattern = new int[codes.length];
    UnassessedCounts unassessed = new UnassessedCounts(wanted.size());
    RowNumbers rows = new RowNumbers();
    for (int row = 0; row < frame.rowCount(); row++) {
      int ownCode = rows.next(grafts.getInt(row), !takes.isMissing(row));
      if (!takes.isMissing(row)) {
        for (int i = 0; i < pattern.length; i++) {
          pattern[i] = codes[i] == null ? ownCode : codes[i][row];
        }
        counts.add(pattern, grafts.getInt(row), takes.getInt(row));
      } else {
        for (int i = 0; i < pattern.length; i++) {
          unassessed.add(i, codes[i] == null ? Factor.MISSING : codes[i][row], grafts.getInt(row));
        }
      }
    }
    CellColumns cells = new CellColumns(counts, unassessed);
    for (int i = 0; i < codes.length; i++) {
      if (codes[i] == null) {
        cells.rows(i, rows);
      } else if (numbers[i] != null) {
        cells.measure(i, wanted.get(i), numbers[i]::number);
      } else {
        cells.factor(i, wanted.get(i), names.get(i)::get);
      }
    }
    return cells.cells(provenance);
  }
}
