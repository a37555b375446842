package org.taketally.model;

import org.apache.commons.statistics.distribution.FDistribution;

/**
 * A test of whether levels differ.
 *
 * @param chiSquare statistic, 0 or more
 * @param degrees degrees of freedom, 1 or more
 * @param pValue how often levels that don't differ would give as much, 0 to 1
 */
public record LevelTest(double chiSquare, int degrees, double pValue) {

  /**
   * The same by F instead of chi-square: where levels change between few groups (beds, days), these
   * are the independent units, however many grafts they hold.
   *
   * @param groupDegrees degrees of freedom of the groups, 1 or more: {@link TakeFit#groupDegrees}
   * @return the test with its p-value from F(degrees, groupDegrees)
   */
  public LevelTest byGroups(int groupDegrees) {
    return new LevelTest(
        chiSquare,
        degrees,
        FDistribution.of(degrees, groupDegrees).survivalProbability(chiSquare / degrees));
  }

  /**
   * The same by F, the groups being what counts, and the spread between them taken as wide as so
   * few groups allow: a most likely spread is too small by the degrees that effects took (as by
   * restricted likelihood). Errs on the side of caution where grafts' own chance, not the groups',
   * makes up most of the error.
   *
   * @param groups between which the levels change
   * @return the test with statistic and p-value so
   */
  public LevelTest between(BetweenGroups groups) {
    double kept = chiSquare * groups.degrees() / groups.count();
    return new LevelTest(kept, degrees, pValue).byGroups(groups.degrees());
  }
}
