package org.taketally.answers.counts;

import org.taketally.terms.Interval;

/**
 * Two one-sided tests: is the value shown to lie between two limits?
 *
 * <p>Shown at chance of error {@code alpha} means both tests reject at {@code alpha}, which is the
 * same as the interval of level 1 - 2 alpha lying wholly within the limits.
 *
 * @param estimate the counted rate or difference
 * @param zLow standard errors by which the estimate lies above the lower limit
 * @param zHigh standard errors by which it lies above the upper limit; negative if below
 * @param interval of level 1 - 2 alpha, same scale as the estimate
 * @see <a href="https://doi.org/10.1007/BF01068419">Schuirmann (1987)</a>
 */
public record Equivalence(double estimate, double zLow, double zHigh, Interval interval) {

  /**
   * Is the difference of two take rates shown to be smaller than a margin? By Miettinen and
   * Nurminen's score, with the rates fitted under each limit.
   *
   * @param first takes of the first lot, at least one graft
   * @param second takes of the second lot, at least one graft
   * @param margin the difference that would change what you do, above 0 and below 1; 0.1 is 10
   *     points
   * @param alpha chance of error allowed, above 0 and below 0.5, e.g. 0.05
   * @return both tests and the interval, first minus second
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static Equivalence ofDifference(
      TakeCount first, TakeCount second, double margin, double alpha) {
    if (!(margin > 0 && margin < 1)) {
      throw new IllegalArgumentException(
          "the margin must lie between 0 and 1, e.g. 0.1 for 10 points, got " + margin);
    }
    requireAlpha(alpha);
    DifferenceScore score = new DifferenceScore(first, second);
    return new Equivalence(
        score.difference(),
        score.scaledAt(-margin),
        score.scaledAt(margin),
        TakeDifference.miettinenNurminen(first, second, 1 - 2 * alpha));
  }

  /**
   * Is one take rate shown to lie between two limits? By the textbook standard error.
   *
   * @param count takes, at least one graft, neither none nor all of them
   * @param low lower limit, 0 or more
   * @param high upper limit, above {@code low}, at most 1
   * @param alpha chance of error allowed, above 0 and below 0.5, e.g. 0.05
   * @return both tests and the interval
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static Equivalence ofRate(TakeCount count, double low, double high, double alpha) {
    if (!(low >= 0 && low < high && high <= 1)) {
      throw new IllegalArgumentException(
          "limits must rise within 0 to 1, got %s and %s".formatted(low, high));
    }
    requireAlpha(alpha);
    double error = count.assessed().standardError();
    if (!(error > 0)) {
      throw new IllegalArgumentException(
          "this test needs both takes and failures, got %d of %d; use ExactEquivalence"
              .formatted(count.takes(), count.grafts()));
    }
    return new Equivalence(
        count.rate(),
        (count.rate() - low) / error,
        (count.rate() - high) / error,
        TakeRateInterval.wald(count.takes(), count.grafts(), 1 - 2 * alpha));
  }

  static void requireAlpha(double alpha) {
    if (!(alpha > 0 && alpha < 0.5)) {
      throw new IllegalArgumentException(
          "alpha must lie between 0 and 0.5, e.g. 0.05, got " + alpha);
    }
  }

  /**
   * The larger of the two one-sided chances.
   *
   * @return chance of an estimate this far inside the limits if the truth lay on one of them, 0 to
   *     1
   */
  public double pValue() {
    return Math.max(Quantiles.above(zLow), Quantiles.below(zHigh));
  }

  /**
   * Whether equivalence is shown.
   *
   * @return true if both tests reject at the alpha of the interval
   */
  public boolean isShown() {
    return pValue() < (1 - interval.coverage()) / 2;
  }
}
