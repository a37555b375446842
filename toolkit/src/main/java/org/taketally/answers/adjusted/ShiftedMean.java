package org.taketally.answers.adjusted;

import java.util.Arrays;

/**
 * Mean take over conditions as a function of what is added to all their logits. Many logits are
 * kept as weights on a fine grid, shared between the two nearest points so that their mean is
 * exact.
 */
final class ShiftedMean {

  private static final int POINTS = 256;

  /** exp(-logit) and weight of each grid point that has any. */
  private final double[] against;

  private final double[] mass;

  private ShiftedMean(double[] against, double[] mass) {
    this.against = against;
    this.mass = mass;
  }

  /**
   * From logits and weights.
   *
   * @param logits one a condition
   * @param weights one a condition, summing to 1
   * @return the function
   */
  static ShiftedMean of(double[] logits, double[] weights) {
    if (logits.length <= POINTS) {
      double[] against = new double[logits.length];
      Arrays.setAll(against, i -> Math.exp(-logits[i]));
      return new ShiftedMean(against, weights);
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double logit : logits) {
      low = Math.min(low, logit);
      high = Math.max(high, logit);
    }
    double step = Math.max((high - low) / (POINTS - 1), 1e-12);
    double perStep = 1 / step;
    double[] mass = new double[POINTS + 1];
    for (int i = 0; i < logits.length; i++) {
      double place = (logits[i] - low) * perStep;
      int below = Math.min((int) place, POINTS - 1);
      double above = place - below;
      mass[below] += weights[i] * (1 - above);
      mass[below + 1] += weights[i] * above;
    }
    double[] against = new double[mass.length];
    int used = 0;
    for (int k = 0; k < mass.length; k++) {
      if (mass[k] != 0) {
        against[used] = Math.exp(-(low + step * k));
        mass[used] = mass[k];
        used++;
      }
    }
    return new ShiftedMean(Arrays.copyOf(against, used), Arrays.copyOf(mass, used));
  }

  /**
   * Mean takes.
   *
   * @param additions added to every logit
   * @return one take an addition
   */
  double[] at(double[] additions) {
    double[] factors = Arrays.stream(additions).map(a -> Math.exp(-a)).toArray();
    double[] sums = new double[factors.length];
    for (int k = 0; k < mass.length; k++) {
      double own = mass[k];
      double odds = against[k];
      for (int a = 0; a < sums.length; a++) {
        sums[a] += own / (1 + odds * factors[a]);
      }
    }
    return sums;
  }
}
