package org.taketally.answers.counts;

/**
 * What a count says about a take rate before anything else is known: the beta distribution after a
 * flat start, Beta(takes + 1, failures + 1).
 *
 * @param count takes, any number of grafts
 * @see "Bayes (1763), Philosophical Transactions 53, 370-418"
 */
public record BetaRate(TakeCount count) {

  /**
   * Expected take rate.
   *
   * @return above 0 and below 1
   */
  public double mean() {
    return (count.takes() + 1.0) / (count.grafts() + 2.0);
  }

  /**
   * Standard deviation of the take rate.
   *
   * @return above 0
   */
  public double standardDeviation() {
    return Math.sqrt(mean() * (1 - mean()) / (count.grafts() + 3.0));
  }
}
