package org.taketally.answers.counts;

import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Interval;

/**
 * Takes and grafts as counted for each level of a column: the first look, which every other answer
 * adjusts.
 *
 * @param column the column counted by
 * @param levels one for each level with grafts, in the order of the levels
 * @param notRecorded grafts whose level was not recorded, in no lot
 * @param level coverage of the ranges, e.g. 0.95
 */
public record TakeCounts(String column, List<LevelCount> levels, long notRecorded, double level)
    implements Answer {

  /**
   * The grafts of one level.
   *
   * @param name the level
   * @param count its takes and grafts
   */
  public record LevelCount(String name, TakeCount count) {}

  public TakeCounts {
    levels = List.copyOf(levels);
    if (levels.isEmpty()) {
      throw new IllegalArgumentException(
          "no grafts to count: column \"%s\" was not recorded for any".formatted(column));
    }
  }

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
   * @param level coverage of the ranges, strictly between 0 and 1
   * @return the counts
   * @throws IllegalArgumentException if the cells lack the factor
   */
  public static TakeCounts of(Cells cells, String column, double level) {
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
    return new TakeCounts(column, found, cells.graftsTotal() - recorded, level);
  }

  /**
   * All levels together.
   *
   * @return takes and grafts
   */
  public TakeCount total() {
    return new TakeCount(
        levels.stream().mapToLong(each -> each.count().takes()).sum(),
        levels.stream().mapToLong(each -> each.count().grafts()).sum());
  }

  /**
   * Wilson range of a count at the coverage of these counts.
   *
   * @param count takes and grafts
   * @return on the take-rate scale, 0 to 1
   */
  public Interval range(TakeCount count) {
    return TakeRateInterval.wilson(count.takes(), count.grafts(), level);
  }

  @Override
  public Question question() {
    return Question.COUNTS;
  }
}
