package org.taketally.answers.effects;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;
import org.taketally.terms.Interval;

/**
 * Take against a number such as days of budwood storage, other things as in the records.
 *
 * @param column the number's column
 * @param unit its unit in words, e.g. {@code days}; empty if not known
 * @param points the curve, from the lowest to the highest recorded value; empty if the model can't
 *     follow the column
 * @param counted grafts and takes as counted, in ranges of the value
 * @param thinFrom value from which the records thin out; NaN if they don't
 * @param change from the first point with enough grafts near to the last; empty without two such
 *     points
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record TakeCurve(
    String column,
    String unit,
    List<Point> points,
    List<Range> counted,
    double thinFrom,
    Optional<Change> change,
    TakeCount tally,
    AnswerOptions options)
    implements Answer {

  public TakeCurve {
    points = List.copyOf(points);
    counted = List.copyOf(counted);
  }

  /**
   * A point of the curve.
   *
   * @param value in the column's unit
   * @param take adjusted take averaged over the other conditions of the records, 0 to 1
   * @param thin whether too few grafts lie near to trust it
   */
  public record Point(double value, Estimate take, boolean thin) {}

  /**
   * Grafts counted in a range of the value.
   *
   * @param from start, included
   * @param to end, included in the last range only
   * @param tally grafts and takes there
   * @param counted Wilson interval of the counted take, 0 to 1
   */
  public record Range(double from, double to, TakeCount tally, Interval counted) {}

  /**
   * How take changes along the curve.
   *
   * @param from the first point with enough grafts near
   * @param to the last such point
   * @param difference take at {@code to} minus take at {@code from}, -1 to 1
   * @param turn a clear top or bottom between them, which the ends alone would hide
   */
  public record Change(Point from, Point to, Estimate difference, Optional<Turn> turn) {}

  /**
   * A clear top or bottom between the ends.
   *
   * @param highest whether take is highest there; lowest otherwise
   * @param at the point
   */
  public record Turn(boolean highest, Point at) {}

  @Override
  public Question question() {
    return Question.CURVE;
  }
}
