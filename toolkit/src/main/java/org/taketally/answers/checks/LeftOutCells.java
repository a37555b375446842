package org.taketally.answers.checks;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.adjusted.NormalAverage;
import org.taketally.cells.Cells;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;

/**
 * What all other cells say about a cell: one Newton step back from the fit, without the cell.
 *
 * <pre>
 *   eta, V   logit of a cell at the modes and its posterior variance, from the draws
 *   w        grafts * p * (1 - p)          r = takes - grafts * p
 *   h        w * V, the cell's own share in its fitted value, kept below 0.9
 *   eta0   = eta - V * r / (1 - h)         logit without the cell
 *   V0     = V / (1 - h)                   its variance
 *   takes  ~ Binomial(grafts, logistic(N(eta0, V0))), the normal by five nodes
 * </pre>
 *
 * @see <a href="https://doi.org/10.1214/aos/1176345513">Pregibon (1981)</a>, one-step deletion
 */
final class LeftOutCells {

  private static final int DRAWS = 400;
  private static final long AFFORDABLE = 100_000_000;
  private static final double OWN_SHARE_AT_MOST = 0.9;

  private final Cells cells;
  private final double[] standardised;
  private final double[] logits;
  private final double[] variances;

  LeftOutCells(MarginalTakes averaging) {
    TakeFit fit = averaging.fit();
    this.cells = fit.cells();
    this.variances = variances(averaging.draws(), cells.size());
    this.logits = fit.linearPredictor().clone();
    this.standardised = new double[logits.length];
    double[] take = fit.fittedTake();
    for (int i = 0; i < logits.length; i++) {
      double w = cells.grafts()[i] * take[i] * (1 - take[i]);
      double r = cells.takes()[i] - cells.grafts()[i] * take[i];
      double h = Math.min(OWN_SHARE_AT_MOST, w * variances[i]);
      variances[i] = w > 0 ? h / w / (1 - h) : variances[i];
      logits[i] -= variances[i] * r;
      standardised[i] = w > 0 ? r / Math.sqrt(w * (1 - h)) : 0;
    }
  }

  private static double[] variances(TakeDraws draws, int cells) {
    int count = (int) Math.min(Math.min(draws.count(), DRAWS), Math.max(100, AFFORDABLE / cells));
    double[] sum = new double[cells];
    double[] squares = new double[cells];
    double[] first = draws.linearPredictor(0);
    for (int d = 0; d < count; d++) {
      double[] eta = draws.linearPredictor(d);
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

  double[] predicted() {
    return IntStream.range(0, cells.size()).parallel().mapToDouble(this::predicted).toArray();
  }

  /** Chance of at most so many takes in a cell. */
  double chanceOfAtMost(int takes, int cell) {
    if (takes < 0) {
      return 0;
    }
    int grafts = cells.grafts()[cell];
    if (takes >= grafts) {
      return 1;
    }
    return NormalAverage.of(
        logits[cell],
        variances[cell],
        logit -> {
          double take = NormalAverage.logistic(logit);
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
