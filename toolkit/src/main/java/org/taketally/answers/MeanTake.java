package org.taketally.answers;

import java.util.Arrays;

/**
 * Mean take over cells as a function of what is added to all their logits. The logits are kept as
 * weights on a fine grid, shared between the two nearest points so that their mean is exact.
 */
final class MeanTake {

  private static final int POINTS = 256;

  private final double start;
  private final double step;
  private final double[] mass;

  private MeanTake(double start, double step, double[] mass) {
    this.start = start;
    this.step = step;
    this.mass = mass;
  }

  /**
   * From logits and weights.
   *
   * @param logits one a cell
   * @param weights one a cell, summing to 1
   * @return the function
   */
  static MeanTake of(double[] logits, double[] weights) {
    double low = Arrays.stream(logits).min().orElse(0);
    double high = Arrays.stream(logits).max().orElse(0);
    double step = Math.max((high - low) / (POINTS - 1), 1e-12);
    double[] mass = new double[POINTS + 1];
    for (int i = 0; i < logits.length; i++) {
      double place = (logits[i] - low) / step;
      int below = Math.min((int) place, POINTS - 1);
      double above = place - below;
      mass[below] += weights[i] * (1 - above);
      mass[below + 1] += weights[i] * above;
    }
    return new MeanTake(low, step, mass);
  }

  MeanTake movedBy(double change) {
    return new MeanTake(start + change, step, mass);
  }

  /** Mean take once {@code addition} is added to every logit. */
  double at(double addition) {
    double sum = 0;
    for (int k = 0; k < mass.length; k++) {
      if (mass[k] != 0) {
        sum += mass[k] / (1 + Math.exp(-(start + step * k + addition)));
      }
    }
    return sum;
  }
}
