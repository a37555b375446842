package org.taketally.records;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.taketally.records.checks.ColumnCount;
import org.taketally.records.checks.LevelCount;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Provenance;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** Counts a frame anew after rows were left out of it. */
final class FrameCounts {

  private final Table frame;
  private final IntColumn grafts;
  private final IntColumn takes;

  FrameCounts(Table frame) {
    this.frame = frame;
    this.grafts = frame.intColumn(RecordColumn.GRAFTS.columnName());
    this.takes = frame.intColumn(RecordColumn.TAKES.columnName());
  }

  /** What was said of all the rows, with the counts of those that are left. */
  RecordsCheck check(RecordsCheck whole, String which) {
    List<String> sources = new ArrayList<>(whole.provenance().sources());
    sources.add(which);
    long[] all = new long[4];
    for (int row = 0; row < frame.rowCount(); row++) {
      add(all, row);
    }
    return new RecordsCheck(
        whole.problems(),
        whole.summary(),
        new Provenance(sources, frame.rowCount(), 0),
        all[1],
        all[2],
        columns(whole),
        levels(RecordColumn.SEASON),
        levels(RecordColumn.SITE),
        whole.batches());
  }

  private void add(long[] sums, int row) {
    sums[0]++;
    if (takes.isMissing(row)) {
      sums[3] += grafts.getInt(row);
    } else {
      sums[1] += grafts.getInt(row);
      sums[2] += takes.getInt(row);
    }
  }

  private List<ColumnCount> columns(RecordsCheck whole) {
    List<ColumnCount> counts = new ArrayList<>();
    for (ColumnCount before : whole.columns()) {
      if (frame.containsColumn(before.name())) {
        Column<?> column = frame.column(before.name());
        long missing = column.countMissing();
        boolean levels = before.kind() == ColumnKind.LEVELS;
        counts.add(
            new ColumnCount(
                before.name(),
                before.kind(),
                before.own(),
                frame.rowCount() - missing,
                missing,
                levels ? column.removeMissing().countUnique() : 0));
      }
    }
    return counts;
  }

  private List<LevelCount> levels(RecordColumn column) {
    Map<String, long[]> sums = new TreeMap<>();
    boolean there = frame.containsColumn(column.columnName());
    for (int row = 0; row < frame.rowCount(); row++) {
      String level = there ? frame.column(column.columnName()).getString(row) : "";
      add(sums.computeIfAbsent(level, name -> new long[4]), row);
    }
    List<LevelCount> counts = new ArrayList<>();
    sums.forEach((level, s) -> counts.add(new LevelCount(level, s[0], s[1], s[2], s[3])));
    if (sums.containsKey("")) {
      counts.add(counts.remove(0)); // what isn't recorded stands last
    }
    return counts;
  }
}
