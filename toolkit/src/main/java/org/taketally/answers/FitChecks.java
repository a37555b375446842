package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeFit;

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

  static final String QUESTION = "Does the model fit these records?";

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
    /** Worth a look. */
    LOOK,
    /** Something is wrong. */
    WRONG;

    /**
     * As printed.
     *
     * @return a lower case word
     */
    public String words() {
      return name().toLowerCase(Locale.ROOT);
    }
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

  /**
   * Checks a fit. Each cell is judged by what the other cells say about it, so that a level with
   * few grafts doesn't vouch for itself.
   *
   * @param fit the fit
   * @param options draws, seed, and whether grafters may be named
   * @return the checks, worst first
   */
  public static FitChecks of(TakeFit fit, AnswerOptions options) {
    return of(new Averaging(fit, options), options);
  }

  static FitChecks of(Averaging averaging, AnswerOptions options) {
    return new FitChecking(averaging, options).answer();
  }

  @Override
  public String title() {
    return QUESTION;
  }

  @Override
  public String headline() {
    List<String> wrong = names(State.WRONG);
    List<String> look = names(State.LOOK);
    String of = "%d checks on %s".formatted(checks.size(), Words.count(tally.grafts(), "graft"));
    if (!wrong.isEmpty()) {
      return "The model doesn't fit in every respect: %s; %s.".formatted(Words.list(wrong), of);
    }
    if (!look.isEmpty()) {
      return "The model fits well enough, but look at: %s; %s.".formatted(Words.list(look), of);
    }
    return "Nothing speaks against the model; %s.".formatted(of);
  }

  private List<String> names(State state) {
    return checks.stream().filter(check -> check.state() == state).map(Check::name).toList();
  }

  @Override
  public String text() {
    List<String> lines = new ArrayList<>(List.of(headline()));
    for (Check check : checks) {
      lines.add(
          "%s: %s%s"
              .formatted(
                  Words.sentence(check.name()),
                  check.finding(),
                  check.remedy().isEmpty() ? "" : " " + check.remedy()));
    }
    return String.join("\n", lines);
  }

  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "fit-checks",
            "Checks of the fit, worst first",
            AnswerColumn.CHECK,
            AnswerColumn.STATE,
            AnswerColumn.VALUE,
            AnswerColumn.FINDING,
            AnswerColumn.REMEDY);
    for (Check c : checks) {
      table.row(c.name(), c.state().words(), c.value(), c.finding(), c.remedy());
    }
    return table.build();
  }

  /** {@inheritDoc} The checks, and calibration by tenths. */
  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder calibration =
        AnswerTable.of(
            "calibration",
            "Predicted against counted take, by tenths of the prediction",
            AnswerColumn.PREDICTED,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE);
    for (Tenth t : tenths) {
      calibration.row(t.predicted(), t.tally());
    }
    return List.of(table(), calibration.build());
  }
}
