package org.taketally.answers.counts;

/**
 * Takes out of grafts.
 *
 * @param takes grafts that took, 0 to {@code grafts}
 * @param grafts grafts assessed, 0 or more
 */
public record TakeCount(long takes, long grafts) {

  public TakeCount {
    if (takes < 0 || takes > grafts) {
      throw new IllegalArgumentException(
          "takes must be 0 to %d (grafts), got %d".formatted(grafts, takes));
    }
  }

  /** The same counts, once sure that there is at least one graft. */
  TakeCount assessed() {
    if (grafts < 1) {
      throw new IllegalArgumentException("grafts must be at least 1, got %d".formatted(grafts));
    }
    return this;
  }

  /**
   * The counted take.
   *
   * @return takes divided by grafts, 0 to 1; NaN without grafts
   */
  public double rate() {
    return (double) takes / grafts;
  }

  /**
   * Grafts that failed.
   *
   * @return grafts minus takes
   */
  public long failures() {
    return grafts - takes;
  }

  /**
   * With the counts of another lot added.
   *
   * @param other counts of other grafts
   * @return grafts and takes of both
   */
  public TakeCount plus(TakeCount other) {
    return new TakeCount(takes + other.takes, grafts + other.grafts);
  }

  /**
   * The usual standard error of the rate; 0 when none or all took, where it says nothing.
   *
   * @return square root of rate * (1 - rate) / grafts
   */
  public double standardError() {
    return Math.sqrt(rate() * (1 - rate()) / grafts);
  }
}
