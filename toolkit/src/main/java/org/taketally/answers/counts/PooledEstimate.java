package org.taketally.answers.counts;

import org.taketally.terms.Interval;

/**
 * One figure for all strata, which comes with whether the strata agree so that it can't be shown
 * without.
 *
 * @param value the pooled figure, on the scale its method states
 * @param interval its likely range, same scale
 * @param agreement whether the strata tell the same story; if they disagree the figure is an
 *     average over unlike things and must be shown flagged
 */
public record PooledEstimate(double value, Interval interval, Agreement agreement) {

  /**
   * Whether the figure must not stand alone.
   *
   * @return true if the strata disagree
   */
  public boolean isFlagged() {
    return agreement.verdict() == Agreement.Verdict.DISAGREE;
  }
}
