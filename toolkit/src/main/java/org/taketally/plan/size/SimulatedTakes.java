package org.taketally.plan.size;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Logit;

/**
 * Takes of a planned trial as they may come out: levels of each column drawn from its spread, then
 * grafts one by one.
 */
final class SimulatedTakes {

  private static final int STEPS = 400;
  private static final double REACH = 8;

  private final Cells planned;
  private final TrialTruth truth;
  private final double[] stockLogits;

  SimulatedTakes(Cells planned, TrialTruth truth) {
    this.planned = planned;
    this.truth = truth;
    double total = Math.sqrt(totalVariance());
    List<String> stocks = planned.factor(RecordColumn.ROOTSTOCK.columnName()).levels();
    this.stockLogits =
        stocks.stream().mapToDouble(stock -> logitFor(take(stock, truth), total)).toArray();
  }

  private static double take(String stock, TrialTruth truth) {
    Double take = truth.takes().get(stock);
    if (take == null) {
      throw new IllegalArgumentException(
          "no take is supposed for rootstock %s; there is one for %s"
              .formatted(stock, String.join(", ", truth.takes().keySet())));
    }
    return take;
  }

  private double totalVariance() {
    return planned.factors().stream()
        .mapToDouble(factor -> truth.spreads().getOrDefault(factor.name(), 0.0))
        .map(sd -> sd * sd)
        .sum();
  }

  /** The planned cells with takes of one trial. */
  Cells draw(long seed) {
    Random random = new Random(scattered(seed));
    double[] eta = new double[planned.size()];
    for (Factor factor : planned.factors()) {
      double sd = truth.spreads().getOrDefault(factor.name(), 0.0);
      double[] effects = new double[factor.size()];
      Arrays.setAll(effects, k -> sd * random.nextGaussian());
      for (int i = 0; i < eta.length; i++) {
        eta[i] += effects[factor.code(i)];
      }
    }
    int[] stock = planned.factor(RecordColumn.ROOTSTOCK.columnName()).codes();
    int[] takes = new int[eta.length];
    for (int i = 0; i < eta.length; i++) {
      double take = Logit.take(eta[i] + stockLogits[stock[i]]);
      for (int graft = 0; graft < planned.grafts(i); graft++) {
        takes[i] += random.nextDouble() < take ? 1 : 0;
      }
    }
    return planned.withTakes(takes);
  }

  /**
   * Seeds far apart from seeds in a row, whose first numbers are much alike in {@link Random}.
   *
   * @see "Steele, Lea and Flood (2014), OOPSLA, section 4: the finaliser of SplitMix"
   */
  private static long scattered(long seed) {
    long z = seed + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }

  /** The logit about which takes average to the one wanted. */
  static double logitFor(double take, double sd) {
    double low = -40;
    double high = 40;
    while (high - low > 1e-10) {
      double middle = (low + high) / 2;
      if (mean(middle, sd) < take) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Mean of logistic(eta + sd z), z standard normal, by the trapezoid rule. */
  private static double mean(double eta, double sd) {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i <= STEPS; i++) {
      double z = -REACH + 2 * REACH * i / STEPS;
      double weight = Math.exp(-z * z / 2);
      sum += weight * Logit.take(eta + sd * z);
      weights += weight;
    }
    return sum / weights;
  }
}
