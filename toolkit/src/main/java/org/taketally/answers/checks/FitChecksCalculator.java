package org.taketally.answers.checks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.CheckKind;
import org.taketally.answers.checks.FitChecks.ExtremeCell;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.model.FitWarning;
import org.taketally.model.TakeFit;

/** Runs the checks of {@link FitChecks} and puts the worst first. */
public final class FitChecksCalculator {

  private static final double MUCH_LEFT_OUT = 0.10;

  private final TakeFit fit;
  private final AnswerOptions options;
  private final LeftOutCells leftOut;

  private FitChecksCalculator(MarginalTakes averaging, AnswerOptions options) {
    this.fit = averaging.fit();
    this.options = options;
    this.leftOut = new LeftOutCells(averaging);
  }

  /**
   * Checks a fit. Each cell is judged by what the other cells say about it, so that a level with
   * few grafts doesn't vouch for itself.
   *
   * @param fit the fit
   * @param options draws, seed, and whether grafters may be named
   * @return the checks, worst first
   */
  public static FitChecks of(TakeFit fit, AnswerOptions options) {
    return of(MarginalTakes.of(fit, options), options);
  }

  public static FitChecks of(MarginalTakes averaging, AnswerOptions options) {
    return new FitChecksCalculator(averaging, options).answer();
  }

  private FitChecks answer() {
    QuantileResiduals residuals = QuantileResiduals.of(leftOut, options.seed());
    List<Tenth> tenths = Calibration.tenths(leftOut);
    SeasonsLeftOut seasons = SeasonsLeftOut.of(fit, options);
    List<ExtremeCell> extremes = new ExtremeCells(fit, leftOut, options).unexpected();
    List<Check> checks =
        new ArrayList<>(
            List.of(
                residuals.check(),
                Scatter.of(leftOut),
                Calibration.check(leftOut),
                seasons.check(),
                ExtremeCells.check(extremes)));
    fit.warnings().stream()
        .filter(FitChecksCalculator::broken)
        .map(FitChecksCalculator::check)
        .forEach(checks::add);
    leftOutGrafts(checks);
    checks.sort(Comparator.comparing(Check::state).reversed());
    return new FitChecks(
        checks,
        tenths,
        residuals.quantiles(),
        seasons.influences(),
        extremes,
        TakeCounter.all(fit.cells()));
  }

  /** Other warnings are findings about the records, not faults of the fit. */
  private static boolean broken(FitWarning warning) {
    return warning.kind() == FitWarning.Kind.NOT_CONVERGED;
  }

  private static Check check(FitWarning warning) {
    return new Check(
        CheckKind.SEARCH, State.WRONG, Double.NaN, new FitChecks.SearchWarning(warning));
  }

  private void leftOutGrafts(List<Check> checks) {
    long used = fit.cells().graftsTotal();
    fit.leftOut()
        .forEach(
            (column, grafts) -> {
              double share = (double) grafts / (grafts + used);
              if (share > MUCH_LEFT_OUT) {
                checks.add(leftOutGrafts(column, grafts, share));
              }
            });
  }

  private static Check leftOutGrafts(String column, long grafts, double share) {
    return new Check(
        CheckKind.GRAFTS_LEFT_OUT,
        State.LOOK,
        share,
        new FitChecks.GraftsUnused(column, grafts, share));
  }
}
