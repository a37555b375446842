package org.taketally.answers.prediction;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.taketally.records.columns.RecordColumn;
import smile.classification.LogisticRegression;

/**
 * Ridge logistic regression on every level: as if each deviated with a standard deviation of one
 * logit, the same for all columns.
 */
final class RidgeForecaster implements Forecaster {

  private static final double PENALTY = 1;
  private static final double TOLERANCE = 1e-6;
  private static final int STEPS = 500;

  private final GraftFeatures features;
  private final double[][] indicators;

  RidgeForecaster(GraftFeatures features) {
    this.features = features;
    this.indicators = features.indicators();
  }

  @Override
  public SecondOpinions.Way way() {
    return SecondOpinions.Way.RIDGE;
  }

  private LogisticRegression.Binomial fit(boolean[] held) {
    double[][] rows =
        Arrays.stream(features.grafts(held)).mapToObj(i -> indicators[i]).toArray(double[][]::new);
    return LogisticRegression.binomial(rows, features.outcomes(held), PENALTY, TOLERANCE, STEPS);
  }

  @Override
  public double[] takes(boolean[] held) {
    LogisticRegression.Binomial fit = fit(held);
    return Arrays.stream(indicators)
        .mapToDouble(
            row -> {
              double[] chances = new double[2];
              fit.predict(row, chances);
              return chances[1];
            })
        .toArray();
  }

  @Override
  public double[] cultivars() {
    int column = features.columns().indexOf(RecordColumn.CULTIVAR.columnName());
    if (column < 0) {
      return new double[0];
    }
    double[] weights = fit(new boolean[indicators.length]).coefficients();
    int at = features.indicatorsBefore(column);
    int levels = features.cells().factor(RecordColumn.CULTIVAR.columnName()).size();
    return IntStream.range(at, at + levels).mapToDouble(j -> weights[j]).toArray();
  }
}
