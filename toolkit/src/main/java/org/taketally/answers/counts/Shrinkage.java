package org.taketally.answers.counts;

import java.util.List;

/**
 * Takes of many lots of one size drawn toward their mean, in the way that can be done by hand: the
 * estimator of James and Stein as Efron and Morris used it.
 *
 * <pre>
 *   k, n   lots, grafts in each      y   counted takes      m   their mean
 *   v      m (1 - m) / n             chance variance of one lot
 *   c      1 - (k - 3) v / sum (y - m)^2      drawn in: m + c (y - m)
 * </pre>
 *
 * <p>Answers use the mixed model instead, which allows for lots of unequal size and for everything
 * else in the records.
 *
 * @param mean m, the mean take
 * @param kept c, the share of each difference from the mean that is kept, cut to 0 to 1
 * @param takes each lot's take drawn in, in the order given
 * @see "Efron and Morris (1977), Scientific American 236 (5), 119-127"
 */
public record Shrinkage(double mean, double kept, List<Double> takes) {

  private static final int FEWEST = 4;

  /**
   * Draws takes in.
   *
   * @param lots at least four, all of the same number of grafts, not all alike
   * @return the takes drawn in
   * @throws IllegalArgumentException if there are fewer, they differ in size or don't differ in
   *     take
   */
  public static Shrinkage of(List<TakeCount> lots) {
    if (lots.size() < FEWEST) {
      throw new IllegalArgumentException(
          "drawing in needs at least %d lots, got %d".formatted(FEWEST, lots.size()));
    }
    long grafts = lots.get(0).assessed().grafts();
    if (lots.stream().anyMatch(lot -> lot.grafts() != grafts)) {
      throw new IllegalArgumentException(
          "shrinking by hand needs lots of one size; use the model for lots of unequal size");
    }
    double mean = lots.stream().mapToDouble(TakeCount::rate).average().orElseThrow();
    double squares = lots.stream().mapToDouble(lot -> square(lot.rate() - mean)).sum();
    if (!(squares > 0)) {
      throw new IllegalArgumentException("all lots have the same take, nothing to shrink");
    }
    double binomial = mean * (1 - mean) / grafts;
    double kept = Math.max(0, 1 - (lots.size() - 3) * binomial / squares);
    return new Shrinkage(
        mean, kept, lots.stream().map(lot -> mean + kept * (lot.rate() - mean)).toList());
  }

  private static double square(double value) {
    return value * value;
  }

  /**
   * A take on the scale where its chance variance is about 1 whatever the take.
   *
   * @param lot takes, at least one graft
   * @return square root of grafts times the arcsine of twice the take minus 1
   * @see "Efron and Morris (1975), Journal of the American Statistical Association 70, 311-319"
   */
  public static double evened(TakeCount lot) {
    return Math.sqrt((double) lot.assessed().grafts()) * Math.asin(2 * lot.rate() - 1);
  }
}
