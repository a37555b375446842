package org.taketally.answers.checks;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Condition;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.counts.WeightedQuantiles;
import org.taketally.cells.Cells;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeFit;

/**
 * A level of an adjusted column against the first, or a high against a low value of a number; a
 * thing two fits can be compared in though their curves have other knots.
 *
 * @param column adjusted column
 * @param from level or number as text
 * @param to level or number as text
 * @param weights what each fixed effect counts in it
 * @param estimate logits
 * @param error its standard error, logits
 */
record FixedContrast(
    String column, String from, String to, double[] weights, double estimate, double error) {

  private static final double LOW = 0.1;
  private static final double HIGH = 0.9;

  static List<FixedContrast> all(TakeFit fit) {
    List<String> columns = new ArrayList<>(fit.model().adjusted());
    columns.addAll(fit.model().curves().keySet());
    List<FixedContrast> all = new ArrayList<>();
    for (String column : columns) {
      if (fit.design().adjustsFor(column)) {
        addTo(all, fit, column);
      }
    }
    return all;
  }

  private static void addTo(List<FixedContrast> all, TakeFit fit, String column) {
    List<String> levels = fit.design().levels(column);
    if (levels.isEmpty()) {
      double[] ends = WeightedQuantiles.weightedQuantiles(fit.cells(), column, LOW, HIGH);
      if (ends[0] < ends[1]) {
        all.add(of(fit, column, Double.toString(ends[0]), Double.toString(ends[1])));
      }
      return;
    }
    levels.stream().skip(1).forEach(level -> all.add(of(fit, column, levels.get(0), level)));
  }

  private static FixedContrast of(TakeFit fit, String column, String from, String to) {
    double[] weights = new double[fit.beta().length];
    for (int j = 0; j < weights.length; j++) {
      double[] unit = new double[weights.length];
      unit[j] = 1;
      weights[j] = value(fit.design(), column, from, to, unit);
    }
    double variance = 0;
    double[][] covariance = fit.betaCovariance();
    for (int j = 0; j < weights.length; j++) {
      for (int k = 0; k < weights.length; k++) {
        variance += weights[j] * weights[k] * covariance[j][k];
      }
    }
    double estimate = value(fit.design(), column, from, to, fit.beta());
    return new FixedContrast(column, from, to, weights, estimate, Math.sqrt(variance));
  }

  private static double value(
      TakeDesign design, String column, String from, String to, double[] beta) {
    return design.contribution(column, to, beta) - design.contribution(column, from, beta);
  }

  /** Distance to the same contrast in another fit, in errors; 0 where it lacks a level. */
  double shift(TakeFit other) {
    TakeDesign design = other.design();
    if (!design.adjustsFor(column)) {
      return 0;
    }
    List<String> levels = design.levels(column);
    if (!levels.isEmpty() && !(levels.contains(from) && levels.contains(to))) {
      return 0;
    }
    return Math.abs(value(design, column, from, to, other.beta()) - estimate) / error;
  }

  /** How far a change of the fixed effects moves it, in errors. */
  double shift(double[] change) {
    double sum = 0;
    for (int j = 0; j < change.length; j++) {
      sum += weights[j] * change[j];
    }
    return Math.abs(sum) / error;
  }

  /** As it may be shown, grafters hidden unless names were asked for. */
  FitChecks.Contrast shown(Cells cells, AnswerOptions options) {
    return new FitChecks.Contrast(shown(from, cells, options), shown(to, cells, options));
  }

  private Condition shown(String level, Cells cells, AnswerOptions options) {
    return cells
        .findFactor(column)
        .map(f -> Condition.level(column, GrafterLabels.shown(f, options).get(f.indexOf(level))))
        .orElseGet(() -> Condition.number(column, Double.parseDouble(level)));
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }
}
