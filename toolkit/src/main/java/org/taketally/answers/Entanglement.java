package org.taketally.answers;

import java.util.List;

/**
 * What was compared with what: whether the levels of one factor were used within the same
 * cultivars, grafters and seasons, or apart.
 *
 * @param compared the factor the question is about
 * @param groups groups of its levels that can be compared with each other; one group if all can
 * @param efficiency share of the information about its differences that is left once every other
 *     factor is allowed for, 0 to 1
 * @param ties how it, and other factors, hang together, worst first
 * @param grafts grafts behind it
 */
public record Entanglement(
    String compared, List<Group> groups, double efficiency, List<Tie> ties, long grafts) {

  /**
   * Levels that can be compared with each other.
   *
   * @param levels of the compared factor
   * @param cultivars cultivars grafted on them, if recorded
   * @param grafts grafts in the group
   */
  public record Group(List<String> levels, List<String> cultivars, long grafts) {}

  /** How two factors hang together. */
  public enum TieKind {
    /** No comparison is possible: levels never met. */
    NEVER_TOGETHER,
    /** One factor says exactly what the other says. */
    SAME_THING,
    /** Few comparisons: most levels of one go with one level of the other. */
    MOSTLY_TOGETHER,
    /** One person, place or season holds most of the grafts of one level. */
    ONE_HOLDS_MOST,
    /** The factor changes only between batches, not within them. */
    BETWEEN_BATCHES
  }

  /**
   * A tie between two factors.
   *
   * @param kind how they hang together
   * @param factor one factor
   * @param other the other
   * @param efficiency share of the information about {@code factor} left once {@code other} is
   *     allowed for, 0 to 1
   * @param refuses whether it makes the comparison of {@code factor} impossible
   * @param sentence what that means, levels named
   */
  public record Tie(
      TieKind kind,
      String factor,
      String other,
      double efficiency,
      boolean refuses,
      String sentence) {}
}
