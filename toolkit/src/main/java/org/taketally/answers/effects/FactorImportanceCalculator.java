package org.taketally.answers.effects;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.WeightedQuantiles;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.VaryingFactor;

/**
 * Works out {@link FactorImportance}: the mean absolute difference of average take between two
 * grafts picked at random that differ in one column (average predictive comparison, Gelman and
 * Pardoe 2007, <a href="https://doi.org/10.1111/j.1467-9531.2007.00181.x">doi</a>).
 */
public final class FactorImportanceCalculator {

  private static final double[] NUMBER_SHARES = {
    0.05, 0.15, 0.25, 0.35, 0.5, 0.65, 0.75, 0.85, 0.95
  };

  private final MarginalTakes averaging;
  private final AnswerOptions options;
  private final TakeFit fit;

  private FactorImportanceCalculator(MarginalTakes averaging, AnswerOptions options) {
    this.averaging = averaging;
    this.options = options;
    this.fit = averaging.fit();
  }

  /**
   * Works it out from a fit.
   *
   * @param fit any fit
   * @param options level, draws, seed
   * @return the answer
   */
  public static FactorImportance of(TakeFit fit, AnswerOptions options) {
    return of(MarginalTakes.of(fit, options), options);
  }

  public static FactorImportance of(MarginalTakes averaging, AnswerOptions options) {
    return new FactorImportanceCalculator(averaging, options).whatMovesTake();
  }

  private FactorImportance whatMovesTake() {
    List<FactorImportance.Importance> factors = new ArrayList<>();
    List<String> fixed = new ArrayList<>(fit.model().adjusted());
    fixed.addAll(fit.model().curves().keySet());
    for (String column : fixed) {
      if (fit.design().adjustsFor(column)) {
        factors.add(fit.design().levels(column).isEmpty() ? number(column) : levels(column));
      }
    }
    for (VaryingFactor factor : fit.varying()) {
      if (!factor.factor().equals(TakeModel.PAIRING)) {
        factors.add(levels(factor.factor()));
      }
    }
    factors.sort(
        Comparator.comparingDouble((FactorImportance.Importance m) -> m.typical().value())
            .reversed());
    return new FactorImportance(factors, TakeCounter.all(fit.cells()), options);
  }

  private FactorImportance.Importance levels(String column) {
    List<String> names = shown(column);
    FactorImportance.Kind kind =
        LevelSubstitution.varies(fit, column)
            ? FactorImportance.Kind.VARYING
            : FactorImportance.Kind.LEVELS;
    return importance(
        column, kind, names.size(), names, averaging.takes(column), averaging.shares(column));
  }

  private FactorImportance.Importance number(String column) {
    double[] values = WeightedQuantiles.weightedQuantiles(fit.cells(), column, NUMBER_SHARES);
    double[] shares = new double[values.length];
    java.util.Arrays.fill(shares, 1.0 / values.length);
    List<String> names =
        java.util.Arrays.stream(values).mapToObj(FactorImportanceCalculator::shown).toList();
    return importance(
        column,
        FactorImportance.Kind.NUMBER,
        WeightedQuantiles.distinct(fit.cells(), column),
        names,
        averaging.takes(column, values),
        shares);
  }

  private static String shown(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  /** Level names; grafters by letters unless names were asked for. */
  private List<String> shown(String column) {
    List<String> names = averaging.levels(column);
    if (!column.equals(GrafterLabels.GRAFTER)) {
      return names;
    }
    List<String> all = fit.cells().factor(column).levels();
    List<String> labels = GrafterLabels.of(all, options);
    return names.stream().map(name -> labels.get(all.indexOf(name))).toList();
  }

  private FactorImportance.Importance importance(
      String column,
      FactorImportance.Kind kind,
      int count,
      List<String> names,
      double[][] takes,
      double[] shares) {
    double[] typical =
        java.util.Arrays.stream(takes).mapToDouble(row -> typical(row, shares)).toArray();
    double[] means =
        IntStream.range(0, names.size())
            .mapToDouble(
                l -> java.util.Arrays.stream(takes).mapToDouble(r -> r[l]).average().orElse(0))
            .toArray();
    int best = extreme(means, 1);
    int worst = extreme(means, -1);
    double[] span =
        java.util.Arrays.stream(takes).mapToDouble(row -> row[best] - row[worst]).toArray();
    Estimate size = DrawSummary.estimate(typical, options.coverage());
    Estimate spread = DrawSummary.estimate(span, options.coverage());
    boolean compared = fit.model().compared().filter(column::equals).isPresent();
    return new FactorImportance.Importance(
        column, kind, count, size, names.get(best), names.get(worst), spread, compared);
  }

  private static int extreme(double[] means, int sign) {
    int at = 0;
    for (int l = 1; l < means.length; l++) {
      at = sign * means[l] > sign * means[at] ? l : at;
    }
    return at;
  }

  /**
   * Mean absolute difference of two grafts of different levels: sum over pairs of shares, divided
   * by the chance that two grafts differ. Sorted, so the cost is levels times log levels.
   */
  static double typical(double[] takes, double[] shares) {
    Integer[] order = IntStream.range(0, takes.length).boxed().toArray(Integer[]::new);
    java.util.Arrays.sort(order, Comparator.comparingDouble(l -> takes[l]));
    double below = 0;
    double weighted = 0;
    double sum = 0;
    double alike = 0;
    for (int l : order) {
      sum += shares[l] * (takes[l] * below - weighted);
      below += shares[l];
      weighted += shares[l] * takes[l];
      alike += shares[l] * shares[l];
    }
    double differ = below * below - alike;
    return differ <= 0 ? 0 : 2 * sum / differ;
  }
}
