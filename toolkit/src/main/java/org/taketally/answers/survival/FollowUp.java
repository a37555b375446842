package org.taketally.answers.survival;

/**
 * Grafts watched alike after they had taken, until they were lost or no longer looked at.
 *
 * @param days days from the take until found lost, or until last seen alive; 0 or more
 * @param lost true if found lost then, false if last seen alive then
 * @param grafts how many grafts, 1 or more
 */
public record FollowUp(double days, boolean lost, long grafts) {

  public FollowUp {
    if (!(days >= 0 && days < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("days watched must be 0 or more, got " + days);
    }
    if (grafts < 1) {
      throw new IllegalArgumentException("grafts must be at least 1, got %d".formatted(grafts));
    }
  }

  /**
   * One graft found lost.
   *
   * @param days days from the take, 0 or more
   * @return the record of it
   */
  public static FollowUp lostAt(double days) {
    return new FollowUp(days, true, 1);
  }

  /**
   * One graft last seen alive.
   *
   * @param days days from the take, 0 or more
   * @return the record of it
   */
  public static FollowUp aliveAt(double days) {
    return new FollowUp(days, false, 1);
  }
}
