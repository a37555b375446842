package org.taketally.records.checks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.rows.Levels;
import org.taketally.records.rows.RecordRow;

/** Sums rows, grafts and takes by the levels of one column. */
final class LevelTally {

  private static final int SUMS = 4;

  private final RecordColumn column;
  private long[] sums = new long[SUMS * 8];
  private int size;

  LevelTally(RecordColumn column) {
    this.column = column;
  }

  void add(RecordRow row) {
    // Place 0 is for rows where the column isn't recorded.
    int place = row.has(column) ? row.code(column) + 1 : 0;
    size = Math.max(size, place + 1);
    if (SUMS * size > sums.length) {
      sums = Arrays.copyOf(sums, 2 * SUMS * size);
    }
    sums[SUMS * place]++;
    if (row.assessed()) {
      sums[SUMS * place + 1] += row.grafts();
      sums[SUMS * place + 2] += row.takes();
    } else {
      sums[SUMS * place + 3] += row.grafts();
    }
  }

  /** The counts, by name, what isn't recorded last. */
  List<LevelCount> counts(Levels levels) {
    List<LevelCount> counts = new ArrayList<>();
    for (int place = 1; place < size; place++) {
      add(counts, levels.name(place - 1), place);
    }
    counts.sort(java.util.Comparator.comparing(LevelCount::level));
    add(counts, "", 0);
    return counts;
  }

  private void add(List<LevelCount> counts, String name, int place) {
    int start = SUMS * place;
    if (sums[start] > 0) {
      counts.add(
          new LevelCount(name, sums[start], sums[start + 1], sums[start + 2], sums[start + 3]));
    }
  }
}
