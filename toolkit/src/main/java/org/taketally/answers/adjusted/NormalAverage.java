package org.taketally.answers.adjusted;

import java.util.function.DoubleUnaryOperator;

/** Averages over a normal distribution by five Gauss-Hermite nodes. */
public final class NormalAverage {

  private static final double ROOT10 = Math.sqrt(10);
  private static final double[] NODES = {0, Math.sqrt(5 - ROOT10), Math.sqrt(5 + ROOT10)};
  private static final double[] WEIGHTS = {8.0 / 15, (7 + 2 * ROOT10) / 60, (7 - 2 * ROOT10) / 60};

  private NormalAverage() {}

  /** Mean of a function of N(mean, variance). */
  public static double of(double mean, double variance, DoubleUnaryOperator function) {
    double sd = Math.sqrt(variance);
    double sum = WEIGHTS[0] * function.applyAsDouble(mean);
    for (int k = 1; k < NODES.length; k++) {
      sum +=
          WEIGHTS[k]
              * (function.applyAsDouble(mean - NODES[k] * sd)
                  + function.applyAsDouble(mean + NODES[k] * sd));
    }
    return sum;
  }

  /** Mean take for a normal logit. */
  public static double take(double mean, double variance) {
    return of(mean, variance, NormalAverage::logistic);
  }

  public static double logistic(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }
}
