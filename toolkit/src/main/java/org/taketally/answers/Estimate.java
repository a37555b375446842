package org.taketally.answers;

import org.taketally.terms.Interval;

/**
 * A value and the range it is likely to lie in.
 *
 * @param value on the scale the owner states (takes and differences of takes: fractions of 1, so
 *     0.04 is 4 points)
 * @param interval the likely range, same scale
 */
public record Estimate(double value, Interval interval) {

  /**
   * Lower limit.
   *
   * @return low end of the likely range
   */
  public double low() {
    return interval.low();
  }

  /**
   * Upper limit.
   *
   * @return high end of the likely range
   */
  public double high() {
    return interval.high();
  }
}
