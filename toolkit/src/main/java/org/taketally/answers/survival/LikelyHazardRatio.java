package org.taketally.answers.survival;

import java.util.Arrays;
import java.util.List;
import org.taketally.answers.counts.Quantiles;
import org.taketally.terms.Interval;

/**
 * How many times as fast one lot is lost as another, as likely values rather than one best value:
 * defined even where one lot had no loss, as long as a prior keeps the ratio from being endless.
 *
 * <p>The posterior of the log ratio b: Breslow's partial likelihood of {@link HazardRatio}, which
 * is what is left when the danger of each day has a gamma prior that says next to nothing, times a
 * normal prior of mean 0. One number is unknown, so the posterior is summed over a fine grid, not
 * drawn.
 *
 * @param logRatio posterior mean of the log hazard ratio, first lot against second
 * @param logRatioSd its posterior standard deviation
 * @param interval likely range of the ratio itself, equal chance on either side
 * @see "Kalbfleisch (1978), Journal of the Royal Statistical Society B 40, 214-221"
 */
public record LikelyHazardRatio(double logRatio, double logRatioSd, Interval interval) {

  private static final int POINTS = 20_001;
  private static final double WIDEST = 60;
  private static final double NEGLIGIBLE = 40;

  /**
   * Two lots.
   *
   * @param lots of two names, first named against second
   * @param priorSd standard deviation of the normal prior of the log ratio, above 0; 2 says that
   *     ratios beyond 50 are not expected, 1000 says nothing
   * @param coverage of the likely range, strictly between 0 and 1, e.g. 0.95
   * @return what is likely
   * @throws IllegalArgumentException if there are not two names, or a number is out of its range
   * @throws ArithmeticException if nothing was lost while both lots were watched
   */
  public static LikelyHazardRatio of(List<Watched> lots, double priorSd, double coverage) {
    if (!(priorSd > 0)) {
      throw new IllegalArgumentException("the prior's deviation must be above 0, got " + priorSd);
    }
    Quantiles.twoSided(coverage);
    List<RiskSet> sets = HazardRatio.compared(lots);
    if (sets.isEmpty()) {
      throw new ArithmeticException("no hazard ratio: nothing was lost while both were watched");
    }
    double[] range = {-WIDEST, WIDEST};
    for (int narrowing = 0; narrowing < 2; narrowing++) {
      range = worthSumming(range, logPosterior(range, sets, priorSd));
    }
    return summary(range, logPosterior(range, sets, priorSd), coverage);
  }

  private static double[] logPosterior(double[] range, List<RiskSet> sets, double priorSd) {
    double[] logs = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double b = at(range, i);
      logs[i] =
          HazardRatio.sum(sets, HazardRatio.Ties.BRESLOW, b).value()
              - b * b / (2 * priorSd * priorSd);
    }
    return logs;
  }

  private static double at(double[] range, double point) {
    return range[0] + (range[1] - range[0]) * point / (POINTS - 1);
  }

  /** The part of the range where the posterior is not negligible. */
  private static double[] worthSumming(double[] range, double[] logs) {
    double most = Arrays.stream(logs).max().getAsDouble();
    int first = 0;
    int last = POINTS - 1;
    while (logs[first] < most - NEGLIGIBLE) {
      first++;
    }
    while (logs[last] < most - NEGLIGIBLE) {
      last--;
    }
    return new double[] {
      at(range, Math.max(0, first - 1)), at(range, Math.min(POINTS, last + 2) - 1)
    };
  }

  private static LikelyHazardRatio summary(double[] range, double[] logs, double coverage) {
    double most = Arrays.stream(logs).max().getAsDouble();
    double total = 0;
    double mean = 0;
    double square = 0;
    double[] below = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double weight = Math.exp(logs[i] - most);
      double b = at(range, i);
      below[i] = total + weight / 2;
      total += weight;
      mean += weight * b;
      square += weight * b * b;
    }
    mean /= total;
    double tail = (1 - coverage) / 2;
    return new LikelyHazardRatio(
        mean,
        Math.sqrt(square / total - mean * mean),
        new Interval(
            Math.exp(quantile(range, below, total * tail)),
            Math.exp(quantile(range, below, total * (1 - tail))),
            coverage));
  }

  /** Between two points of the grid, straight. */
  private static double quantile(double[] range, double[] below, double wanted) {
    int i = 1;
    while (i < POINTS - 1 && below[i] < wanted) {
      i++;
    }
    double share = (wanted - below[i - 1]) / (below[i] - below[i - 1]);
    return at(range, i - 1 + Math.min(1, Math.max(0, share)));
  }
}
