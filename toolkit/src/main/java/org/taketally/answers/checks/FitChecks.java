package org.taketally.answers.checks;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.Condition;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.FitWarning;

/**
 * Whether the model fits the records, check by check.
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

  /** What is checked. */
  public enum CheckKind {
    /** What the model leaves unexplained. */
    LEFT_OVER_SCATTER,
    /** How widely takes scatter between cells of several grafts. */
    SCATTER_BETWEEN_CELLS,
    /** Predicted against counted take. */
    CALIBRATION,
    /** What changes when one season is left out. */
    SEASONS_LEFT_OUT,
    /** Cells of which none or all took. */
    NONE_OR_ALL_TAKEN,
    /** Whether the search for the best fit ended. */
    SEARCH,
    /** Grafts that couldn't be used for want of a column. */
    GRAFTS_LEFT_OUT
  }

  /**
   * One check.
   *
   * @param kind what was checked
   * @param state how it came out
   * @param value the figure behind it, in its own unit; NaN if there is none
   * @param finding what was found
   */
  public record Check(CheckKind kind, State state, double value, Finding finding) {}

  /** What a check found. */
  public sealed interface Finding {}

  /**
   * How far what is left over lies from chance.
   *
   * @param gap largest gap between the residuals' distribution and an even one, 0 to 1
   * @param cells how many cells were looked at
   */
  public record LeftOver(double gap, int cells) implements Finding {}

  /** Nearly all grafts stand alone in their conditions, so no scatter can be seen. */
  public record GraftsStandAlone() implements Finding {}

  /**
   * How widely takes scatter between cells.
   *
   * @param ratio variance between cells against what chance gives, 1 if the model fits
   * @param cells how many cells of several grafts were looked at
   */
  public record CellScatter(double ratio, int cells) implements Finding {}

  /**
   * Predicted against counted take.
   *
   * @param worst the group with the largest gap
   * @param groups how many groups there are
   */
  public record LargestGap(Tenth worst, int groups) implements Finding {}

  /**
   * What changes when one season is left out.
   *
   * @param most the season whose absence changes most
   */
  public record MostSwayed(SeasonInfluence most) implements Finding {}

  /** Why no season could be left out. */
  public enum SeasonsUntried implements Finding {
    /** The records or the model have nothing to try it with. */
    NOTHING_TO_TRY,
    /** No season can be left out and the rest still be fitted. */
    REST_CANT_BE_FITTED
  }

  /**
   * Cells of which none or all took although the other grafts made that very unlikely.
   *
   * @param cells the least likely first; may be empty
   */
  public record UnexpectedCells(List<ExtremeCell> cells) implements Finding {
    public UnexpectedCells {
      cells = List.copyOf(cells);
    }
  }

  /**
   * What the fit warns of.
   *
   * @param warning by the fit
   */
  public record SearchWarning(FitWarning warning) implements Finding {}

  /**
   * Grafts left out because a column wasn't recorded for them.
   *
   * @param column which column
   * @param grafts how many
   * @param share of all grafts, 0 to 1
   */
  public record GraftsUnused(String column, long grafts, double share) implements Finding {}

  /**
   * A comparison between two levels, or two values of a number.
   *
   * @param from a level or number of a column
   * @param to another of the same column
   */
  public record Contrast(Condition from, Condition to) {}

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
   * @param contrast the comparison that changes most
   */
  public record SeasonInfluence(
      String season, long grafts, double largestShift, Contrast contrast) {}

  /**
   * A cell where none or all took.
   *
   * @param conditions what its grafts have in common
   * @param tally grafts and takes
   * @param predicted predicted take, 0 to 1
   */
  public record ExtremeCell(List<Condition> conditions, TakeCount tally, double predicted) {
    public ExtremeCell {
      conditions = List.copyOf(conditions);
    }
  }

  @Override
  public Question question() {
    return Question.FIT;
  }
}
