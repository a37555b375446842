package org.taketally.model.numeric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A density of one standard deviation, log-linear between grid points: a proposal to sample from.
 */
public final class LogLinearDensity {

  /** The grid ends where the log density is this far below its highest. */
  private static final double FAR = 9;

  private static final int FINE = 40;

  /** Where the ends of the grid are looked for, logits. */
  private static final double LEAST = 0.004;

  private static final double MOST = 20;
  private static final double STEP = 1.6;

  /** Intervals of the grid of a known shape, and where it ends, in multiples of its reach. */
  private static final int KNOWN = 60;

  private static final double LOWEST = -1;
  private static final double HIGHEST = 2;

  private final double[] at;
  private final double[] logDensity;
  private final double[] upTo;

  private LogLinearDensity(double[] at, double[] logDensity) {
    int fine = (at.length - 1) * FINE + 1;
    this.at = new double[fine];
    this.logDensity = new double[fine];
    this.upTo = new double[fine];
    for (int i = 0; i < fine; i++) {
      int left = Math.min(i / FINE, at.length - 2);
      double share = (i - left * FINE) / (double) FINE;
      this.at[i] = at[left] + share * (at[left + 1] - at[left]);
      this.logDensity[i] = logDensity[left] + share * (logDensity[left + 1] - logDensity[left]);
    }
    double highest = Arrays.stream(logDensity).max().orElse(0);
    for (int i = 0; i < fine; i++) {
      this.logDensity[i] -= highest;
    }
    for (int i = 1; i < fine; i++) {
      upTo[i] =
          upTo[i - 1]
              + (this.at[i] - this.at[i - 1])
                  * (Math.exp(this.logDensity[i]) + Math.exp(this.logDensity[i - 1]))
                  / 2;
    }
  }

  /**
   * Tabulates a log density over (0, infinity).
   *
   * @param centre a likely value, above 0
   * @param intervals of the grid
   * @param logDensity safe from several threads
   */
  public static LogLinearDensity of(
      double centre, int intervals, DoubleUnaryOperator logDensity, Parallel parallel) {
    double middle = logDensity.applyAsDouble(centre);
    double[][] walked = new double[2][];
    parallel.run(
        2, way -> walked[way] = walk(centre, way == 0 ? STEP : 1 / STEP, middle, logDensity));
    double top = Math.max(middle, Arrays.stream(walked[0]).max().orElse(middle));
    double high = centre * Math.pow(STEP, walked[0].length);
    double low = centre * Math.pow(STEP, -stepsToFar(walked[1], middle, top));
    double[] grid = new double[intervals + 1];
    double[] values = new double[grid.length];
    for (int i = 0; i < grid.length; i++) {
      double share = i / (double) intervals;
      grid[i] =
          low <= LEAST
              ? LEAST / 2 + (high - LEAST / 2) * share * share
              : low * Math.pow(high / low, share);
    }
    parallel.run(grid.length, i -> values[i] = logDensity.applyAsDouble(grid[i]));
    return new LogLinearDensity(grid, values);
  }

  /** Log densities met going one way until they are far below the highest met. */
  private static double[] walk(
      double centre, double step, double middle, DoubleUnaryOperator logDensity) {
    List<Double> met = new ArrayList<>();
    double at = centre;
    double highest = middle;
    double here = middle;
    while (here > highest - FAR && at < MOST && at > LEAST) {
      at *= step;
      here = logDensity.applyAsDouble(at);
      highest = Math.max(highest, here);
      met.add(here);
    }
    return met.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** How many of the steps were needed, now that the other way is known, too. */
  private static int stepsToFar(double[] walked, double middle, double top) {
    double highest = top;
    double here = middle;
    int steps = 0;
    while (here > highest - FAR && steps < walked.length) {
      here = walked[steps++];
      highest = Math.max(highest, here);
    }
    return steps;
  }

  /**
   * Where many cells pin the standard deviation of m levels down: the density of the spread of m
   * normal deviations that are as good as known, log p = -m (log t + s^2 / (2 t^2)).
   *
   * @param estimate s, above 0
   * @param levels m, as many as the curvature at the estimate amounts to, above 0
   * @param prior log density of the prior
   */
  public static LogLinearDensity known(double estimate, double levels, DoubleUnaryOperator prior) {
    double reach = 4 / Math.sqrt(2 * levels);
    double[] grid = new double[KNOWN + 1];
    double[] values = new double[grid.length];
    for (int i = 0; i < grid.length; i++) {
      double log = reach * (LOWEST + i * (HIGHEST - LOWEST) / KNOWN);
      grid[i] = estimate * Math.exp(log);
      values[i] = -levels * (log + Math.exp(-2 * log) / 2) + prior.applyAsDouble(grid[i]);
    }
    return new LogLinearDensity(grid, values);
  }

  /**
   * Where the variance is known no better than to a normal error: log p = -i (t^2 - s^2)^2 / 2.
   *
   * @param estimate s, above 0
   * @param information i, of the variance, above 0
   * @param prior log density of the prior
   */
  public static LogLinearDensity measured(
      double estimate, double information, DoubleUnaryOperator prior) {
    double variance = estimate * estimate;
    double reach = 4 / Math.sqrt(information);
    double low = Math.sqrt(Math.max(1e-6 * variance, variance - reach));
    double high = Math.sqrt(variance + reach);
    double[] grid = new double[KNOWN + 1];
    double[] values = new double[grid.length];
    for (int i = 0; i < grid.length; i++) {
      grid[i] = low + i * (high - low) / KNOWN;
      double away = grid[i] * grid[i] - variance;
      values[i] = -information * away * away / 2 + prior.applyAsDouble(grid[i]);
    }
    return new LogLinearDensity(grid, values);
  }

  public double quantile(double share) {
    double wanted = share * upTo[upTo.length - 1];
    int i = Arrays.binarySearch(upTo, wanted);
    if (i >= 0) {
      return at[i];
    }
    int right = Math.min(-i - 1, at.length - 1);
    double part = (wanted - upTo[right - 1]) / (upTo[right] - upTo[right - 1]);
    return at[right - 1] + part * (at[right] - at[right - 1]);
  }

  /** Of the density as drawn from: even between fine points. */
  public double logDensity(double value) {
    int i = Arrays.binarySearch(at, value);
    int right = Math.max(1, i >= 0 ? i : Math.min(-i - 1, at.length - 1));
    return Math.log((upTo[right] - upTo[right - 1]) / (at[right] - at[right - 1]));
  }
}
