package org.taketally.answers.counts;

import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.counts.TakeCounts.LevelCount;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.records.GraftRecords;

/** Works out {@link TakeCounts}. */
public final class TakeCountsCalculator {

  private TakeCountsCalculator() {}

  /**
   * Counts assessed grafts.
   *
   * @param records any records
   * @param column a column of names, derived ones included
   * @return the counts, with 95 % ranges
   * @throws IllegalArgumentException if there is no such column of names
   */
  public static TakeCounts of(GraftRecords records, String column) {
    return of(CellsOf.records(records, List.of(column)), column, 0.95);
  }

  /**
   * Counts assessed grafts.
   *
   * @param cells any cells with the column
   * @param column a factor of the cells
   * @param coverage coverage of the ranges, strictly between 0 and 1
   * @return the counts
   * @throws IllegalArgumentException if the cells lack the factor
   */
  public static TakeCounts of(Cells cells, String column, double coverage) {
    Factor factor = cells.factor(column);
    int[] codes = factor.codes();
    int[] inUse =
        IntStream.of(codes).filter(code -> code != Factor.MISSING).distinct().sorted().toArray();
    List<String> levels = IntStream.of(inUse).mapToObj(factor.levels()::get).toList();
    TakeCount[] counts = TakeCounter.byLevel(cells, column, levels);
    List<LevelCount> found =
        IntStream.range(0, counts.length)
            .mapToObj(l -> new LevelCount(levels.get(l), counts[l]))
            .toList();
    long recorded = found.stream().mapToLong(each -> each.count().grafts()).sum();
    return new TakeCounts(column, found, cells.graftsTotal() - recorded, coverage);
  }
}
