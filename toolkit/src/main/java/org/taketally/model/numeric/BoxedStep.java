package org.taketally.model.numeric;

import java.util.stream.IntStream;

/**
 * The step d that gains most, g'd - d'Bd / 2, among those within bounds: a primal active set, which
 * is solved again for the other parameters whenever one meets its bound (Nocedal and Wright 2006,
 * algorithm 16.3). The gain is never below 0, and d always climbs.
 */
public final class BoxedStep {

  /** A multiplier below this share of the slopes doesn't free a parameter from its bound. */
  private static final double SLIGHT = 1e-12;

  private final double[][] curvature;
  private final double[] slope;
  private final double[] low;
  private final double[] high;
  private final boolean[] bound;
  private final double[] step;

  private BoxedStep(double[][] curvature, double[] slope, double[] low, double[] high) {
    this.curvature = curvature;
    this.slope = slope;
    this.low = low;
    this.high = high;
    this.bound = new boolean[slope.length];
    this.step = new double[slope.length];
  }

  /**
   * Finds the step.
   *
   * @param curvature B, positive definite but for parameters that can't move
   * @param slope g
   * @param low most a parameter may fall, at most 0
   * @param high most it may rise, at least 0
   */
  public static BoxedStep of(double[][] curvature, double[] slope, double[] low, double[] high) {
    BoxedStep boxed = new BoxedStep(curvature, slope, low, high);
    boxed.find();
    return boxed;
  }

  public double[] step() {
    return step;
  }

  /** g'd - d'Bd / 2, at least 0. */
  public double gain() {
    double[] left = slopeLeft();
    double gain = 0;
    for (int j = 0; j < step.length; j++) {
      gain += step[j] * (slope[j] + left[j]) / 2;
    }
    return Math.max(0, gain);
  }

  private void find() {
    for (int j = 0; j < bound.length; j++) {
      bound[j] = slope[j] > 0 ? high[j] <= 0 : low[j] >= 0;
    }
    for (int round = 0; round < 4 * bound.length + 8; round++) {
      if (advance() && !release()) {
        return;
      }
    }
  }

  /** To the best point for the free parameters, or to the first bound on the way. */
  private boolean advance() {
    int[] free = IntStream.range(0, bound.length).filter(j -> !bound[j]).toArray();
    if (free.length == 0) {
      return true;
    }
    double[] left = slopeLeft();
    double[] right = IntStream.of(free).mapToDouble(j -> left[j]).toArray();
    double[] move = SmallMatrix.ofSteadied(SmallMatrix.part(curvature, free)).solve(right);
    double share = 1;
    int blocking = -1;
    for (int i = 0; i < free.length; i++) {
      double room = (move[i] < 0 ? low : high)[free[i]] - step[free[i]];
      if (Math.abs(move[i]) * share > Math.abs(room)) {
        share = room / move[i];
        blocking = free[i];
      }
    }
    for (int i = 0; i < free.length; i++) {
      step[free[i]] += share * move[i];
    }
    if (blocking >= 0) {
      bound[blocking] = true;
      step[blocking] = slopeSide(blocking, move, free);
    }
    return blocking < 0;
  }

  private double slopeSide(int parameter, double[] move, int[] free) {
    int at = java.util.Arrays.binarySearch(free, parameter);
    return (move[at] < 0 ? low : high)[parameter];
  }

  /** Frees the parameter that its bound keeps from gaining most; false if there is none. */
  private boolean release() {
    double[] left = slopeLeft();
    int most = -1;
    double best = 0;
    for (int j = 0; j < bound.length; j++) {
      boolean pulls = bound[j] && (left[j] > 0 ? step[j] < high[j] : step[j] > low[j]);
      double gain = left[j] * left[j] / curvature[j][j];
      if (pulls && Math.abs(left[j]) > SLIGHT * Math.abs(slope[j]) && gain > best) {
        best = gain;
        most = j;
      }
    }
    if (most >= 0) {
      bound[most] = false;
    }
    return most >= 0;
  }

  private double[] slopeLeft() {
    double[] left = new double[slope.length];
    for (int j = 0; j < left.length; j++) {
      left[j] = slope[j] - Vectors.dot(curvature[j], step);
    }
    return left;
  }
}
