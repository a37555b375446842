package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;

/**
 * From values to positions along one direction.
 *
 * @param low value at {@code from}
 * @param high value at {@code to}, above {@code low}
 * @param from position of {@code low}
 * @param to position of {@code high}
 */
record LinearScale(double low, double high, double from, double to) {

  private static final double[] STEPS = {1, 2, 5, 10};
  private static final double SLACK = 1e-9;

  LinearScale {
    if (!(low < high)) {
      throw new IllegalArgumentException(
          "a scale runs from low to high, got %s to %s".formatted(low, high));
    }
  }

  /** Position of a value; values beyond the ends are drawn at the ends. */
  double at(double value) {
    double share = (Math.min(Math.max(value, low), high) - low) / (high - low);
    return from + share * (to - from);
  }

  boolean holds(double value) {
    return low <= value && value <= high;
  }

  /** Round values inside the scale, at most {@code most} of them. */
  List<Double> ticks(int most) {
    double step = step((high - low) / most);
    List<Double> ticks = new ArrayList<>();
    for (long i = (long) Math.ceil(low / step - SLACK); i * step <= high + SLACK * step; i++) {
      ticks.add(i * step);
    }
    return ticks;
  }

  private static double step(double atLeast) {
    double power = Math.pow(10, Math.floor(Math.log10(atLeast)));
    for (double step : STEPS) {
      if (step * power >= atLeast * (1 - SLACK)) {
        return step * power;
      }
    }
    return STEPS[STEPS.length - 1] * power;
  }

  /** A scale whose ends are round values around the given ones. */
  static LinearScale around(double low, double high, double from, double to) {
    double spread = Math.max(high - low, SLACK);
    double step = step(spread / 8);
    return new LinearScale(
        Math.floor(low / step + SLACK) * step, Math.ceil(high / step - SLACK) * step, from, to);
  }
}
