package org.taketally.answers.counts;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.terms.Interval;

/**
 * Takes and grafts as counted for each level of a column: the first look, which every other answer
 * adjusts.
 *
 * @param column the column counted by
 * @param levels one for each level with grafts, in the order of the levels
 * @param notRecorded grafts whose level was not recorded, in no lot
 * @param coverage coverage of the ranges, e.g. 0.95
 */
public record TakeCounts(String column, List<LevelCount> levels, long notRecorded, double coverage)
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
    return TakeRateInterval.wilson(count.takes(), count.grafts(), coverage);
  }

  @Override
  public Question question() {
    return Question.COUNTS;
  }
}
