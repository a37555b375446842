package org.taketally.answers.counts;

import java.util.Arrays;
import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/** Grafts and takes as counted, nothing adjusted. */
public final class TakeCounter {

  private TakeCounter() {}

  public static TakeCount all(Cells cells) {
    return new TakeCount(cells.takesTotal(), cells.graftsTotal());
  }

  /** Counts of some levels of a column, in their order; levels not named are left out. */
  public static TakeCount[] byLevel(Cells cells, String column, List<String> levels) {
    Factor factor = cells.factor(column);
    int[] place = factor.levels().stream().mapToInt(levels::indexOf).toArray();
    long[] grafts = new long[levels.size()];
    long[] takes = new long[levels.size()];
    for (int i = 0; i < cells.size(); i++) {
      int code = factor.code(i);
      if (code != Factor.MISSING && place[code] >= 0) {
        grafts[place[code]] += cells.grafts(i);
        takes[place[code]] += cells.takes(i);
      }
    }
    TakeCount[] counts = new TakeCount[levels.size()];
    for (int l = 0; l < counts.length; l++) {
      counts[l] = new TakeCount(takes[l], grafts[l]);
    }
    return counts;
  }

  /** Counts of some levels of a column taken together. */
  public static TakeCount together(Cells cells, String column, List<String> levels) {
    TakeCount[] each = byLevel(cells, column, levels);
    return new TakeCount(
        Arrays.stream(each).mapToLong(TakeCount::takes).sum(),
        Arrays.stream(each).mapToLong(TakeCount::grafts).sum());
  }
}
