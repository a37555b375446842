package org.taketally.answers;

/**
 * Grafts assessed and takes among them.
 *
 * @param grafts grafts assessed, 0 or more
 * @param takes grafts alive at assessment, 0 to {@code grafts}
 */
public record Tally(long grafts, long takes) {

  public Tally {
    if (grafts < 0 || takes < 0 || takes > grafts) {
      throw new IllegalArgumentException(
          "takes must be 0 to %d (grafts), got %d".formatted(grafts, takes));
    }
  }

  /**
   * Share that took, as counted, nothing adjusted.
   *
   * @return 0 to 1; NaN without grafts
   */
  public double take() {
    return grafts == 0 ? Double.NaN : (double) takes / grafts;
  }

  /**
   * Both counts added up.
   *
   * @param other more grafts
   * @return the sum
   */
  public Tally plus(Tally other) {
    return new Tally(grafts + other.grafts, takes + other.takes);
  }
}
