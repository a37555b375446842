package org.taketally.watch;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A watched season: what stands apart in it, and how it runs as a whole.
 *
 * @param watch the chart over its sessions and the alarms, the level of the season learnt as it
 *     goes
 * @param expectedFailures failures that past seasons let expect of the grafts counted
 * @param level how the season runs as a whole, logits of take against past seasons; below 0 is
 *     worse
 * @param spread how far seasons differ, standard deviation, logits
 * @param points the same level as a difference in take at the mean take expected, -1 to 1
 */
public record WatchedSeason(
    TakeWatch watch, double expectedFailures, double level, double spread, double points) {

  /**
   * How often a season runs as badly, if seasons are like past ones.
   *
   * @return chance, 0 to 1
   */
  public double asBadAsThis() {
    return NormalDistribution.of(0, 1).cumulativeProbability(level / Math.max(1e-9, spread));
  }
}
