package org.taketally.watch;

/**
 * Something failing lots have in common.
 *
 * @param column e.g. {@code grafter}
 * @param level which
 * @param gain how much better it explains the counts, log-likelihood less the log of the column's
 *     levels, above 0
 * @param oddsRatio odds of failing against those expected (after causes named before), 1 or more
 * @param grafts grafts of the level counted
 * @param failures of them
 * @param expectedFailures of them, causes named before allowed for
 */
public record Cause(
    String column,
    String level,
    double gain,
    double oddsRatio,
    long grafts,
    long failures,
    double expectedFailures) {

  /**
   * Failures beyond those expected.
   *
   * @return above 0
   */
  public double excess() {
    return failures - expectedFailures;
  }
}
