package org.taketally.answers.effects;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;
import org.taketally.terms.Interval;

/**
 * Every factor on one scale: pick two grafts at random that differ in this factor and in nothing
 * else; how far apart are their takes on average?
 *
 * @param factors largest first
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record FactorImportance(List<Importance> factors, TakeCount tally, AnswerOptions options)
    implements Answer {

  public FactorImportance {
    factors = List.copyOf(factors);
  }

  /** How a factor stands in the model. */
  public enum Kind {
    /** Levels of their own, e.g. method. */
    LEVELS,
    /** A number. */
    NUMBER,
    /** Levels taken as a sample of many, e.g. cultivar. */
    VARYING
  }

  /**
   * One factor.
   *
   * @param factor column of the records
   * @param kind how it stands in the model
   * @param levels number of levels in the records; for a number, of distinct values
   * @param typical typical difference between two grafts that differ in it, 0 to 1 (0.04 is 4
   *     points); held to {@code span}, since where little is known the average of differences of
   *     any sign lies above the difference of the two averages that lie furthest apart
   * @param best the level, or value, with the highest take
   * @param worst the level, or value, with the lowest; numbers: within the middle nine tenths of
   *     the grafts
   * @param span take at {@code best} minus take at {@code worst}, 0 to 1
   * @param compared whether it is the factor the question is about
   */
  public record Importance(
      String factor,
      Kind kind,
      int levels,
      Estimate typical,
      String best,
      String worst,
      Estimate span,
      boolean compared) {

    public Importance {
      if (typical.value() > span.value()) {
        Interval range = typical.interval();
        double low = Math.min(range.low(), span.value());
        typical = new Estimate(span.value(), new Interval(low, range.high(), range.coverage()));
      }
    }

    /**
     * Whether takes surely differ with it.
     *
     * @return whether its likely range, in whole points, stays off zero
     */
    public boolean sure() {
      return Math.round(100 * typical.low()) > 0;
    }
  }

  @Override
  public Question question() {
    return Question.IMPORTANCE;
  }
}
