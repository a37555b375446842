package org.taketally.watch.chart;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * CUSUM of single grafts with whole scores: a failure adds {@code failureScore}, a take subtracts
 * 1, never below 0; alarm at {@code limit} or beyond. Its run length is exact, by the Markov chain
 * over the states 0 to limit - 1.
 *
 * @param failureScore what a failure adds, 1 or more; a take costs 1, so that the score stays low
 *     while fewer than 1 in failureScore + 1 fail
 * @param limit 1 to 2,000
 * @see "Reynolds and Stoumbos (1999), Journal of Quality Technology 31, 87-108"
 */
public record BernoulliCusum(int failureScore, int limit) {

  private static final int MOST_STATES = 2000;

  public BernoulliCusum {
    if (failureScore < 1) {
      throw new IllegalArgumentException(
          "a failure must add 1 or more to the score, got " + failureScore);
    }
    if (limit < 1 || limit > MOST_STATES) {
      throw new IllegalArgumentException(
          "the limit must be 1 to %d, got %d".formatted(MOST_STATES, limit));
    }
  }

  /**
   * Grafts until the alarm, on average, starting from 0.
   *
   * @param failing chance that a graft fails, above 0, at most 1
   * @return average run length in grafts, 1 or more
   */
  public double averageRunLength(double failing) {
    if (!(failing > 0 && failing <= 1)) {
      throw new IllegalArgumentException(
          "the chance of failing must be above 0 and at most 1, got " + failing);
    }
    double[][] left = new double[limit][limit];
    double[] ones = new double[limit];
    for (int state = 0; state < limit; state++) {
      ones[state] = 1;
      left[state][state] += 1;
      left[state][Math.max(0, state - 1)] -= 1 - failing;
      if (state + failureScore < limit) {
        left[state][state + failureScore] -= failing;
      }
    }
    return new LUDecomposition(new Array2DRowRealMatrix(left, false), 0)
        .getSolver()
        .solve(new ArrayRealVector(ones, false))
        .getEntry(0);
  }
}
