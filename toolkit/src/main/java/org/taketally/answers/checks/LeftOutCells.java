package org.taketally.answers.checks;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.cells.Cells;
import org.taketally.model.NormalAverage;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.terms.Logit;

/**
 * What all other cells say about a cell. Where the cell has little say in its own fitted value, by
 * one Newton step back from the fit; else by the draws, each weighted by how little it owes to the
 * cell, weights above the root of their number times their mean cut off.
 *
 * <pre>
 *   eta, V   logit of a cell at the modes and its posterior variance, from the draws
 *   w        grafts * p * (1 - p)          r = takes - grafts * p
 *   b, s2    luck of the cell's own row and its variance, 0 for single grafts; V is that of eta - b
 *   h        V * w / (1 + w s2), the cell's own share in what isn't its own luck
 *   eta0   = eta - b - V * r / (1 - h)     logit without the cell, h up to 0.2
 *   V0     = V / (1 - h) + s2              its variance
 *   q_d    = 1 / P(takes | eta_d)          weight of a draw, h above that; eta0 and V0 are the
 *                                          mean and variance of eta_d so weighted
 *   takes  ~ Binomial(grafts, logistic(N(eta0, V0))), the normal by five nodes
 * </pre>
 *
 * @see <a href="https://doi.org/10.1214/aos/1176345513">Pregibon (1981)</a>, one-step deletion
 * @see <a href="https://doi.org/10.1198/106186008X320456">Ionides (2008)</a>, truncated weights
 */
final class LeftOutCells {

  private static final int DRAWS = 400;
  private static final long AFFORDABLE = 100_000_000;
  private static final double OWN_SHARE_AT_MOST = 0.2;
  private static final int SHARED_BY = 10;

  private final Cells cells;
  private final double[] standardised;
  private final double[] shared;
  private final double[] logits;
  private final double[] variances;

  LeftOutCells(MarginalTakes averaging) {
    TakeFit fit = averaging.fit();
    this.cells = fit.cells();
    RowLuck luck = RowLuck.of(averaging);
    this.variances = variances(averaging.draws(), luck, cells.size());
    this.logits = fit.linearPredictor();
    this.standardised = new double[logits.length];
    this.shared = shared(fit);
    double[] take = fit.fittedTake();
    boolean[] ownSay = new boolean[logits.length];
    for (int i = 0; i < logits.length; i++) {
      double w = cells.grafts(i) * take[i] * (1 - take[i]);
      double r = cells.takes(i) - cells.grafts(i) * take[i];
      double s2 = luck.variance(i);
      double h = w / (1 + w * s2) * variances[i];
      ownSay[i] = h > OWN_SHARE_AT_MOST;
      if (!ownSay[i]) {
        double others = variances[i] / (1 - h);
        logits[i] -= luck.fitted(i) + others * r;
        variances[i] = others + s2;
        standardised[i] = s2 > 0 ? beyond(i) : w > 0 ? r / Math.sqrt(w * (1 - h)) : 0;
      }
    }
    weigh(averaging.draws(), IntStream.range(0, logits.length).filter(i -> ownSay[i]).toArray());
  }

  /** Cells with a say of their own, by weighted draws. */
  private void weigh(TakeDraws draws, int[] own) {
    int count = own.length == 0 ? 0 : (int) Math.min(draws.count(), AFFORDABLE / cells.size());
    double[][] eta = new double[own.length][count];
    for (int d = 0; d < count; d++) {
      double[] all = draws.linearPredictor(d);
      for (int k = 0; k < own.length; k++) {
        eta[k][d] = all[own[k]];
      }
    }
    IntStream.range(0, own.length).parallel().forEach(k -> weigh(own[k], eta[k]));
  }

  private void weigh(int cell, double[] eta) {
    double[] weight = new double[eta.length];
    for (int d = 0; d < eta.length; d++) {
      weight[d] = -logProbability(cell, eta[d]);
    }
    double top = Arrays.stream(weight).max().orElse(0);
    Arrays.setAll(weight, d -> Math.exp(weight[d] - top));
    double most = Arrays.stream(weight).average().orElse(1) * Math.sqrt(eta.length);
    double sum = 0;
    double mean = 0;
    double square = 0;
    for (int d = 0; d < eta.length; d++) {
      double q = Math.min(most, weight[d]);
      sum += q;
      mean += q * eta[d];
      square += q * eta[d] * eta[d];
    }
    logits[cell] = mean / sum;
    variances[cell] = Math.max(0, square / sum - logits[cell] * logits[cell]);
    standardised[cell] = beyond(cell);
  }

  /** Log chance of the cell's takes, up to a constant. */
  private double logProbability(int cell, double eta) {
    return cells.takes(cell) * eta - cells.grafts(cell) * Logit.minusLogFailure(eta);
  }

  /** Counted less expected takes, in standard errors of what the others say. */
  private double beyond(int cell) {
    double variance = variance(cell);
    double expected = cells.grafts(cell) * predicted(cell);
    return variance > 0 ? (cells.takes(cell) - expected) / Math.sqrt(variance) : 0;
  }

  /** Variance of a cell's takes by what the others say: that of chance, and of its logit. */
  double variance(int cell) {
    double n = cells.grafts(cell);
    double p = predicted(cell);
    double both =
        NormalAverage.of(logits[cell], variances[cell], eta -> Math.pow(Logit.take(eta), 2));
    return n * p * (1 - p) + n * (n - 1) * Math.max(0, both - p * p);
  }

  /** Variance of the logits of cells, less what is a row's own. */
  private static double[] variances(TakeDraws draws, RowLuck luck, int cells) {
    int count = (int) Math.min(Math.min(draws.count(), DRAWS), Math.max(100, AFFORDABLE / cells));
    double[] sum = new double[cells];
    double[] squares = new double[cells];
    double[] first = luck.without(draws, 0);
    for (int d = 0; d < count; d++) {
      double[] eta = luck.without(draws, d);
      for (int i = 0; i < cells; i++) {
        double off = eta[i] - first[i];
        sum[i] += off;
        squares[i] += off * off;
      }
    }
    return IntStream.range(0, cells)
        .mapToDouble(i -> (squares[i] - sum[i] * sum[i] / count) / (count - 1))
        .toArray();
  }

  Cells cells() {
    return cells;
  }

  /** Counted less fitted takes in standard errors, the cell's own share allowed for. */
  double standardised(int cell) {
    return standardised[cell];
  }

  /** Chance of take, 0 to 1. */
  double predicted(int cell) {
    return NormalAverage.take(logits[cell], variances[cell]);
  }

  /** Logit of each cell by the fit, without levels that few cells share. */
  private static double[] shared(TakeFit fit) {
    double[] eta = fit.linearPredictor();
    for (VaryingFactor factor : fit.varying()) {
      int[] codes = fit.design().codes(factor.factor());
      int[] count = new int[factor.levels().size()];
      for (int code : codes) {
        count[code]++;
      }
      for (int i = 0; i < eta.length; i++) {
        eta[i] -= count[codes[i]] < SHARED_BY ? factor.levelEffect(codes[i]) : 0;
      }
    }
    return eta;
  }

  /** By what the fit says of levels that many cells share: no cell owes its place to itself. */
  double[] shared() {
    return shared;
  }

  double[] predicted() {
    return IntStream.range(0, cells.size()).parallel().mapToDouble(this::predicted).toArray();
  }

  /** Chance of at most so many takes in a cell. */
  double probabilityOfAtMost(int takes, int cell) {
    if (takes < 0) {
      return 0;
    }
    int grafts = cells.grafts(cell);
    if (takes >= grafts) {
      return 1;
    }
    return NormalAverage.of(
        logits[cell],
        variances[cell],
        logit -> {
          double take = Logit.take(logit);
          return grafts == 1
              ? 1 - take
              : BinomialDistribution.of(grafts, take).cumulativeProbability(takes);
        });
  }

  /** Cells in rising order of the predicted take. */
  static int[] order(double[] predicted) {
    Integer[] order = IntStream.range(0, predicted.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, (a, b) -> Double.compare(predicted[a], predicted[b]));
    return Arrays.stream(order).mapToInt(i -> i).toArray();
  }
}
