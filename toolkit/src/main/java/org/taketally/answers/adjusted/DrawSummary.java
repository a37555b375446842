package org.taketally.answers.adjusted;

import java.util.Arrays;
import org.taketally.answers.Estimate;
import org.taketally.terms.Interval;
import org.taketally.terms.SampleQuantiles;

/** Posterior draws of one quantity as an estimate with its likely range. */
public final class DrawSummary {

  private DrawSummary() {}

  /**
   * Mean and central range of some draws.
   *
   * @param draws any order
   * @param coverage coverage of the range, 0 to 1
   * @return the mean, kept inside the range
   */
  public static Estimate estimate(double[] draws, double coverage) {
    Interval range = range(draws, coverage);
    double mean = Arrays.stream(draws).average().orElseThrow();
    return new Estimate(Math.min(Math.max(mean, range.low()), range.high()), range);
  }

  /** Median and central range, for skewed or discrete quantities such as ranks and spreads. */
  public static Estimate median(double[] draws, double coverage) {
    double[] sorted = sorted(draws);
    return new Estimate(SampleQuantiles.of(sorted, 0.5), range(draws, coverage));
  }

  public static Interval range(double[] draws, double coverage) {
    double[] sorted = sorted(draws);
    double tail = (1 - coverage) / 2;
    return new Interval(
        SampleQuantiles.of(sorted, tail), SampleQuantiles.of(sorted, 1 - tail), coverage);
  }

  /** One column of a table of draws. */
  public static double[] column(double[][] draws, int column) {
    return Arrays.stream(draws).mapToDouble(row -> row[column]).toArray();
  }

  /** Share of draws that meet a condition. */
  public static double probability(double[] draws, java.util.function.DoublePredicate condition) {
    return (double) Arrays.stream(draws).filter(condition).count() / draws.length;
  }

  private static double[] sorted(double[] draws) {
    double[] sorted = draws.clone();
    Arrays.sort(sorted);
    return sorted;
  }
}
