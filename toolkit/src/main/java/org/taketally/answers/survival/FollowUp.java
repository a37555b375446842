package org.taketally.answers.survival;

/**
 * Grafts watched alike after they had taken, until they were lost or no longer looked at.
 *
 * @param from day from which they were watched: 0, or later where they were first seen alive later;
 *     nothing is known of those of their like that were lost before
 * @param days days from the take until found lost, or until last seen alive; {@code from} or more,
 *     and above it if lost later than day 0
 * @param lost true if found lost then, false if last seen alive then
 * @param grafts how many grafts, 1 or more
 */
public record FollowUp(double from, double days, boolean lost, long grafts) {

  public FollowUp {
    if (!(days >= 0 && days < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("days watched must be 0 or more, got " + days);
    }
    if (!(from >= 0 && (from < days || (from == days && (!lost || from == 0))))) {
      throw new IllegalArgumentException(
          "watching must begin on day 0 or later and before day %s, got %s".formatted(days, from));
    }
    if (grafts < 1) {
      throw new IllegalArgumentException("grafts must be at least 1, got %d".formatted(grafts));
    }
  }

  /**
   * Grafts watched from day 0.
   *
   * @param days days until found lost, or until last seen alive; 0 or more
   * @param lost true if found lost then
   * @param grafts how many, 1 or more
   */
  public FollowUp(double days, boolean lost, long grafts) {
    this(0, days, lost, grafts);
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

  /** Whether they were alive and looked at up to a day. */
  boolean atRisk(double day) {
    return days >= day && (from < day || from == 0);
  }
}
