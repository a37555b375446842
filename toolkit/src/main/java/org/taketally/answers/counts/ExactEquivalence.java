package org.taketally.answers.counts;

import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Exact two one-sided tests for one take rate: which counts show that it lies between two limits,
 * and how likely such a count is.
 *
 * @param grafts grafts to be assessed, at least 1
 * @param lowest fewest takes that show it
 * @param highest most takes that show it; below {@code lowest} if no count can
 */
public record ExactEquivalence(int grafts, int lowest, int highest) {

  /**
   * The counts that show that a take rate lies between two limits.
   *
   * @param grafts grafts to be assessed, at least 1
   * @param low lower limit, above 0
   * @param high upper limit, above {@code low}, below 1
   * @param alpha chance of error allowed, above 0 and below 0.5, e.g. 0.05
   * @return the counts
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static ExactEquivalence of(int grafts, double low, double high, double alpha) {
    if (grafts < 1) {
      throw new IllegalArgumentException("grafts must be at least 1, got %d".formatted(grafts));
    }
    if (!(low > 0 && low < high && high < 1)) {
      throw new IllegalArgumentException(
          "limits must rise between 0 and 1, got %s and %s".formatted(low, high));
    }
    Equivalence.requireAlpha(alpha);
    BinomialDistribution atLow = BinomialDistribution.of(grafts, low);
    BinomialDistribution atHigh = BinomialDistribution.of(grafts, high);
    int lowest = 0;
    while (lowest <= grafts && atLow.survivalProbability(lowest - 1) > alpha) {
      lowest++;
    }
    int highest = grafts;
    while (highest >= 0 && atHigh.cumulativeProbability(highest) > alpha) {
      highest--;
    }
    return new ExactEquivalence(grafts, lowest, highest);
  }

  /**
   * Whether a count shows it.
   *
   * @param takes grafts that took, 0 to {@code grafts}
   * @return true if so
   */
  public boolean isShownBy(int takes) {
    return lowest <= takes && takes <= highest;
  }

  /**
   * How likely a count that shows it is.
   *
   * @param rate the true take rate, 0 to 1
   * @return chance, 0 to 1
   */
  public double power(double rate) {
    return lowest > highest
        ? 0
        : BinomialDistribution.of(grafts, rate).probability(lowest - 1, highest);
  }
}
