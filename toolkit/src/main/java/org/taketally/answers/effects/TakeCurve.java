package org.taketally.answers.effects;

import java.util.List;
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
 * @param headline the answer in one sentence
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record TakeCurve(
    String column,
    String unit,
    List<Point> points,
    List<Range> counted,
    double thinFrom,
    String headline,
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

  @Override
  public Question question() {
    return Question.CURVE;
  }
}
