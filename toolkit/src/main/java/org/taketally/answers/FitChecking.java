package org.taketally.answers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.taketally.answers.FitChecks.Check;
import org.taketally.answers.FitChecks.ExtremeCell;
import org.taketally.answers.FitChecks.State;
import org.taketally.answers.FitChecks.Tenth;
import org.taketally.model.FitWarning;
import org.taketally.model.TakeFit;

/** Runs the checks of {@link FitChecks} and says what to do. */
final class FitChecking {

  private static final double MUCH_LEFT_OUT = 0.10;

  private final TakeFit fit;
  private final AnswerOptions options;
  private final LeftOutCells leftOut;

  FitChecking(Averaging averaging, AnswerOptions options) {
    this.fit = averaging.fit();
    this.options = options;
    this.leftOut = new LeftOutCells(averaging);
  }

  FitChecks answer() {
    double[] predicted = leftOut.predicted();
    QuantileResiduals residuals = QuantileResiduals.of(leftOut, options.seed());
    List<Tenth> tenths = Calibration.tenths(leftOut.cells(), predicted);
    SeasonsLeftOut seasons = SeasonsLeftOut.of(fit, options);
    List<ExtremeCell> extremes = new ExtremeCells(fit, leftOut, options).unexpected();
    List<Check> checks =
        new ArrayList<>(
            List.of(
                residuals.check(),
                Scatter.of(leftOut),
                Calibration.check(tenths),
                seasons.check(),
                ExtremeCells.check(extremes)));
    fit.warnings().stream()
        .filter(FitChecking::broken)
        .map(FitChecking::check)
        .forEach(checks::add);
    leftOutGrafts(checks);
    checks.sort(Comparator.comparing(Check::state).reversed());
    return new FitChecks(
        checks,
        tenths,
        residuals.quantiles(),
        seasons.influences(),
        extremes,
        Counted.all(fit.cells()));
  }

  /** Other warnings are findings about the records, not faults of the fit. */
  private static boolean broken(FitWarning warning) {
    return warning.kind() == FitWarning.Kind.NOT_CONVERGED;
  }

  private static Check check(FitWarning warning) {
    return new Check("the search", State.WRONG, Double.NaN, warning.sentence(), "");
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
        "grafts left out",
        State.LOOK,
        share,
        "%s (%s) were not used because %s wasn't recorded."
            .formatted(Words.count(grafts, "graft"), Words.percent(share), Words.column(column)),
        "Fill it in, or leave %s out of the model and see whether the answers change."
            .formatted(Words.column(column)));
  }
}
