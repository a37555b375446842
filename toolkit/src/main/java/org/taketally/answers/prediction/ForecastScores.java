package org.taketally.answers.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.checks.Calibration;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.cells.Cells;
import org.taketally.terms.Logit;
import smile.classification.LogisticRegression;

/**
 * How good predicted chances were for grafts not seen, each graft counting alike.
 *
 * @see <a href="https://doi.org/10.1198/016214506000001437">Gneiting and Raftery (2007)</a>
 */
final class ForecastScores {

  /** Nothing counts as more certain than this. */
  private static final double LEAST = 0.005;

  private static final double TOLERANCE = 1e-8;
  private static final int STEPS = 200;
  private static final double FLAT = 0.05;

  private final Cells cells;
  private final double[] takes;

  ForecastScores(Cells cells, double[] predicted) {
    this.cells = cells;
    this.takes =
        java.util.Arrays.stream(predicted)
            .map(take -> Math.min(1 - LEAST, Math.max(LEAST, take)))
            .toArray();
  }

  private double log(int cell) {
    int y = cells.takes(cell);
    return y * Math.log(takes[cell]) + (cells.grafts(cell) - y) * Math.log1p(-takes[cell]);
  }

  /** Mean log probability of what happened. */
  double logScore() {
    return IntStream.range(0, takes.length).mapToDouble(this::log).sum() / cells.graftsTotal();
  }

  /** Mean squared error of the chance. */
  double brier() {
    return IntStream.range(0, takes.length)
            .mapToDouble(
                i -> {
                  int y = cells.takes(i);
                  double p = takes[i];
                  return y * (1 - p) * (1 - p) + (cells.grafts(i) - y) * p * p;
                })
            .sum()
        / cells.graftsTotal();
  }

  /**
   * Slope of what happened on the predicted logit (Cox 1958); NaN if predictions hardly differ.
   *
   * @see <a href="https://doi.org/10.1093/biomet/45.3-4.562">Cox (1958)</a>
   */
  double calibrationSlope() {
    double[] logits = IntStream.range(0, takes.length).mapToDouble(this::logit).toArray();
    if (spread(logits) < FLAT) {
      return Double.NaN;
    }
    List<double[]> rows = new ArrayList<>();
    int[] outcomes = new GraftFeatures(cells, List.of()).outcomes(new boolean[takes.length]);
    for (int i : new GraftFeatures(cells, List.of()).grafts(new boolean[takes.length])) {
      rows.add(new double[] {logits[i]});
    }
    return LogisticRegression.binomial(rows.toArray(double[][]::new), outcomes, 0, TOLERANCE, STEPS)
        .coefficients()[0];
  }

  private double logit(int cell) {
    return Logit.of(takes[cell]);
  }

  private static double spread(double[] values) {
    double mean = java.util.Arrays.stream(values).average().orElse(0);
    return Math.sqrt(
        java.util.Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElse(0));
  }

  /** Predicted against counted take by tenths of the prediction. */
  List<Tenth> tenths() {
    return Calibration.tenths(cells, takes);
  }

  /** How far the log score lies above another's, in standard errors over cells. */
  double lead(ForecastScores other) {
    double mean = logScore() - other.logScore();
    double squares =
        IntStream.range(0, takes.length)
            .mapToDouble(i -> Math.pow(log(i) - other.log(i) - cells.grafts(i) * mean, 2))
            .sum();
    return squares == 0 ? 0 : mean * cells.graftsTotal() / Math.sqrt(squares);
  }
}
