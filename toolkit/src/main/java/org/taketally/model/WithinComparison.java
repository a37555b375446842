package org.taketally.model;

import java.util.List;
import java.util.Map;

/**
 * The compared column compared within groups, and across them. All differences are from the base
 * level, in logits, in the order of {@code levels} without the base.
 *
 * @param compared the compared column
 * @param levels its levels, base first
 * @param differences within groups: the level's fixed effects
 * @param covariance of these
 * @param across one entry a column of groups whose shares entered
 * @param unused columns of groups whose shares didn't enter, or not all, and why
 */
public record WithinComparison(
    String compared,
    List<String> levels,
    List<Double> differences,
    List<List<Double>> covariance,
    List<Across> across,
    Map<String, Unused> unused) {

  public WithinComparison {
    levels = List.copyOf(levels);
    differences = List.copyOf(differences);
    covariance = List.copyOf(covariance);
    across = List.copyOf(across);
    unused = Map.copyOf(unused);
  }

  /** Why shares of a column of groups didn't enter. */
  public enum Unused {
    /** A level changes hardly within the groups, so that it can only be compared across them. */
    HARDLY_CHANGES_WITHIN,
    /** Each level has the same share in every group: nothing to correct. */
    BALANCED,
    /** Too few groups to tell shares from luck. */
    FEW_GROUPS,
    /** Groups are adjusted for level by level: the comparison is one within them anyway. */
    ADJUSTED_FOR,
    /** Other columns of the model say the same. */
    SAID_BY_OTHER_COLUMNS
  }

  /**
   * The comparison across the groups of one column.
   *
   * @param groups the column of groups
   * @param levels those whose shares entered
   * @param differences across groups, one a level: the difference within, and what a group gains
   *     when its share rises from none to all
   * @param covariance of these
   * @param disagreement whether across and within differ: Wald's test that no share matters
   */
  public record Across(
      String groups,
      List<String> levels,
      List<Double> differences,
      List<List<Double>> covariance,
      LevelTest disagreement) {

    public Across {
      levels = List.copyOf(levels);
      differences = List.copyOf(differences);
      covariance = List.copyOf(covariance);
    }
  }

  /**
   * The comparison across the groups of a column.
   *
   * @param groups a column of groups
   * @return empty if its shares didn't enter
   */
  public java.util.Optional<Across> across(String groups) {
    return across.stream().filter(a -> a.groups().equals(groups)).findFirst();
  }
}
