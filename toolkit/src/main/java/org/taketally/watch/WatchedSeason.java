package org.taketally.watch;

import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A watched season: what stands apart in it, and how it runs as a whole.
 *
 * @param watch the chart over its sessions and the alarms, the effect of the season learnt as it
 *     goes
 * @param expectedFailures failures that past seasons let expect of the grafts counted
 * @param seasonEffect how the season runs as a whole, logits of take against past seasons; below 0
 *     is worse
 * @param spread how far seasons differ, standard deviation, logits
 * @param points the same as a difference in take at the mean take expected, -1 to 1
 * @param seen failures seen and expected by hand, week, stock and so on, the effect of the season
 *     allowed for
 * @param due what is counted, due and not yet due
 */
public record WatchedSeason(
    TakeWatch watch,
    double expectedFailures,
    double seasonEffect,
    double spread,
    double points,
    List<Seen> seen,
    CountsDue due) {

  public WatchedSeason {
    seen = List.copyOf(seen);
  }

  /**
   * Counted grafts of one level of a column.
   *
   * @param column e.g. {@code grafter}
   * @param level which
   * @param grafts counted, 1 or more
   * @param failures of them
   * @param expectedFailures of them
   */
  public record Seen(
      String column, String level, long grafts, long failures, double expectedFailures) {

    /**
     * Failures beyond those expected.
     *
     * @return below 0 if fewer failed
     */
    public double excess() {
      return failures - expectedFailures;
    }
  }

  /**
   * How often a season runs as badly, if seasons are like past ones.
   *
   * @return chance, 0 to 1
   */
  public double asBadAsThis() {
    return NormalDistribution.of(0, 1).cumulativeProbability(seasonEffect / Math.max(1e-9, spread));
  }
}
