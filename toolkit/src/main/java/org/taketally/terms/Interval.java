package org.taketally.terms;

/**
 * A range a value is likely to lie in, and how likely.
 *
 * @param low lower limit, not above {@code high}; on the scale the owner of the interval states
 * @param high upper limit
 * @param coverage how often such ranges hold the value, strictly between 0 and 1, e.g. 0.95
 */
public record Interval(double low, double high, double coverage) {

  public Interval {
    if (!(low <= high)) {
      throw new IllegalArgumentException(
          "an interval runs from low to high, got %s to %s".formatted(low, high));
    }
    if (!(coverage > 0 && coverage < 1)) {
      throw new IllegalArgumentException(
          "coverage must lie between 0 and 1, e.g. 0.95, got %s".formatted(coverage));
    }
  }

  /**
   * Whether a value lies inside, limits included.
   *
   * @param value on the interval's own scale
   * @return true from low to high
   */
  public boolean contains(double value) {
    return low <= value && value <= high;
  }

  /**
   * Whether the other interval lies wholly inside this one.
   *
   * @param other on the same scale
   * @return true if both limits of {@code other} lie inside
   */
  public boolean contains(Interval other) {
    return low <= other.low && other.high <= high;
  }

  /**
   * The width.
   *
   * @return high minus low, 0 or more
   */
  public double width() {
    return high - low;
  }
}
