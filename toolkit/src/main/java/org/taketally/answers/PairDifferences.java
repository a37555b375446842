package org.taketally.answers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.taketally.terms.Interval;

/**
 * Differences of take between every pair of levels, from posterior draws. Ranges hold for all pairs
 * at once: each is as many standard deviations wide as the most extreme pair of a draw lies from
 * its mean in the stated share of draws.
 */
final class PairDifferences {

  private final List<String> levels;
  private final double[][] takes;
  private final double level;

  /**
   * Of some levels.
   *
   * @param levels names
   * @param takes one row a draw, one take a level
   * @param level coverage of the simultaneous ranges
   */
  PairDifferences(List<String> levels, double[][] takes, double level) {
    this.levels = levels;
    this.takes = takes;
    this.level = level;
  }

  /** Every pair, the lower take second, largest difference first. */
  List<FactorVerdict.Pair> pairs(double margin) {
    double[] mean = means();
    List<int[]> places = places(mean);
    double[] sd = places.stream().mapToDouble(p -> sd(p, mean)).toArray();
    double reach = reach(places, mean, sd);
    List<FactorVerdict.Pair> pairs = new ArrayList<>();
    for (int k = 0; k < sd.length; k++) {
      int[] p = places.get(k);
      double centre = mean[p[0]] - mean[p[1]];
      double[] draws = Arrays.stream(takes).mapToDouble(row -> row[p[0]] - row[p[1]]).toArray();
      Interval equivalence = Samples.range(draws, 1 - 2 * VerdictRules.ONE_SIDED);
      pairs.add(
          new FactorVerdict.Pair(
              levels.get(p[0]),
              levels.get(p[1]),
              new Estimate(
                  centre, new Interval(centre - reach * sd[k], centre + reach * sd[k], level)),
              equivalence,
              -margin < equivalence.low() && equivalence.high() < margin,
              Samples.chance(draws, x -> Math.abs(x) > margin)));
    }
    pairs.sort(java.util.Comparator.comparingDouble(p -> -p.difference().value()));
    return pairs;
  }

  /** Largest difference between two levels, one a draw. */
  double[] largest() {
    return Arrays.stream(takes)
        .mapToDouble(row -> Arrays.stream(row).max().orElse(0) - Arrays.stream(row).min().orElse(0))
        .toArray();
  }

  /** Standard deviation of each pair's difference, smallest first. */
  double[] standardErrors() {
    double[] mean = means();
    return places(mean).stream().mapToDouble(p -> sd(p, mean)).sorted().toArray();
  }

  double[] means() {
    double[] mean = new double[levels.size()];
    for (double[] row : takes) {
      for (int l = 0; l < mean.length; l++) {
        mean[l] += row[l] / takes.length;
      }
    }
    return mean;
  }

  private static List<int[]> places(double[] mean) {
    List<int[]> places = new ArrayList<>();
    for (int a = 0; a < mean.length; a++) {
      for (int b = a + 1; b < mean.length; b++) {
        places.add(mean[a] >= mean[b] ? new int[] {a, b} : new int[] {b, a});
      }
    }
    return places;
  }

  private double sd(int[] p, double[] mean) {
    double sum = 0;
    for (double[] row : takes) {
      double away = row[p[0]] - row[p[1]] - (mean[p[0]] - mean[p[1]]);
      sum += away * away;
    }
    return Math.sqrt(sum / takes.length);
  }

  private double reach(List<int[]> places, double[] mean, double[] sd) {
    double[] most = new double[takes.length];
    for (int d = 0; d < most.length; d++) {
      for (int k = 0; k < sd.length; k++) {
        int[] p = places.get(k);
        double away = takes[d][p[0]] - takes[d][p[1]] - (mean[p[0]] - mean[p[1]]);
        most[d] = sd[k] == 0 ? most[d] : Math.max(most[d], Math.abs(away) / sd[k]);
      }
    }
    Arrays.sort(most);
    return most[(int) Math.min(most.length - 1, Math.ceil(level * most.length) - 1)];
  }
}
