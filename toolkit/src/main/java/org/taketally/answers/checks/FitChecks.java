package org.taketally.answers.checks;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;

/**
 * Whether the model fits the records, and in words what is wrong and what to do.
 *
 * @param checks one per thing checked, worst first
 * @param tenths predicted against counted take by tenths of the prediction
 * @param residuals randomised quantile residuals at even chances, about normal if the model fits
 * @param seasons what changes when one season is left out
 * @param extremes cells with none or all taken that the model did not expect
 * @param tally grafts and takes behind it
 */
public record FitChecks(
    List<Check> checks,
    List<Tenth> tenths,
    List<Quantile> residuals,
    List<SeasonInfluence> seasons,
    List<ExtremeCell> extremes,
    TakeCount tally)
    implements Answer {

  public FitChecks {
    checks = List.copyOf(checks);
    tenths = List.copyOf(tenths);
    residuals = List.copyOf(residuals);
    seasons = List.copyOf(seasons);
    extremes = List.copyOf(extremes);
  }

  /** How a check came out. */
  public enum State {
    /** Nothing to do. */
    FINE,
    /** These records can't show it either way. */
    NOT_CHECKABLE,
    /** Worth a look. */
    LOOK,
    /** Something is wrong. */
    WRONG
  }

  /**
   * One check.
   *
   * @param name what was checked
   * @param state how it came out
   * @param value the figure behind it, in its own unit; NaN if there is none
   * @param finding what was found, in words
   * @param remedy what to do; empty if nothing
   */
  public record Check(String name, State state, double value, String finding, String remedy) {}

  /**
   * A tenth of the grafts by predicted take.
   *
   * @param predicted mean predicted take, 0 to 1
   * @param tally grafts and takes
   */
  public record Tenth(double predicted, TakeCount tally) {}

  /**
   * A quantile of the residuals.
   *
   * @param expected what a normal distribution would give
   * @param found what the residuals give
   */
  public record Quantile(double expected, double found) {}

  /**
   * A season left out.
   *
   * @param season name
   * @param grafts its grafts
   * @param largestShift largest change of a fixed effect, in its standard errors
   * @param term the effect that changes most
   */
  public record SeasonInfluence(String season, long grafts, double largestShift, String term) {}

  /**
   * A cell where none or all took.
   *
   * @param cell the cell in words
   * @param tally grafts and takes
   * @param predicted predicted take, 0 to 1
   */
  public record ExtremeCell(String cell, TakeCount tally, double predicted) {}

  @Override
  public Question question() {
    return Question.FIT;
  }
}
