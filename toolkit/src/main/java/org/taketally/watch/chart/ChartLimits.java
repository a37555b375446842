package org.taketally.watch.chart;

/** Checks shared by the charts. */
final class ChartLimits {

  private ChartLimits() {}

  static void require(double limit) {
    if (!(limit > 0 && limit < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("the limit must be above 0, e.g. 4, got " + limit);
    }
  }
}
