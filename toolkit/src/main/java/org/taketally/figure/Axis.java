package org.taketally.figure;

import java.util.List;
import java.util.function.DoubleFunction;

/**
 * The horizontal axis of a chart.
 *
 * @param low lowest value
 * @param high highest value
 * @param caption what it measures
 * @param words a value in words, for the ticks
 * @param zones named stretches along the axis
 * @param zeroLine whether zero is drawn as a heavy line
 */
record Axis(
    double low,
    double high,
    String caption,
    DoubleFunction<String> words,
    List<Zone> zones,
    boolean zeroLine) {

  /**
   * A named stretch of the axis.
   *
   * @param from start
   * @param to end
   * @param words name, written above it
   * @param shaded whether it is tinted
   */
  record Zone(double from, double to, String words, boolean shaded) {}

  LinearScale between(double from, double to) {
    return new LinearScale(low, high, from, to);
  }
}
