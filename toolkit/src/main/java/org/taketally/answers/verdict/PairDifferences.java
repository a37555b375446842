package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
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
  private final double[] mean;
  private final List<int[]> places;
  private final double[] errors;
  private final double reach;

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
    this.mean = means(takes);
    this.places = places(mean);
    this.errors = places.stream().mapToDouble(this::sd).toArray();
    this.reach = reachOfAll();
  }

  /**
   * Every pair, the lower take second, largest difference first.
   *
   * @param margin the margin equivalence is judged by
   * @param judged draws by which equivalence is judged; usually those of the pairs themselves
   */
  List<FactorVerdict.Pair> pairs(double margin, double[][] judged) {
    List<FactorVerdict.Pair> pairs = new ArrayList<>();
    for (int k = 0; k < errors.length; k++) {
      int[] p = places.get(k);
      double centre = mean[p[0]] - mean[p[1]];
      Interval equivalence =
          DrawSummary.range(differences(judged, p), 1 - 2 * VerdictRules.ONE_SIDED);
      pairs.add(
          new FactorVerdict.Pair(
              levels.get(p[0]),
              levels.get(p[1]),
              new Estimate(centre, around(centre, reach * errors[k])),
              equivalence,
              -margin < equivalence.low() && equivalence.high() < margin,
              DrawSummary.chance(differences(takes, p), x -> Math.abs(x) > margin)));
    }
    pairs.sort(Comparator.comparingDouble(p -> -p.difference().value()));
    return pairs;
  }

  private Interval around(double centre, double half) {
    return new Interval(Math.max(-1, centre - half), Math.min(1, centre + half), level);
  }

  private static double[] differences(double[][] takes, int[] p) {
    return Arrays.stream(takes).mapToDouble(row -> row[p[0]] - row[p[1]]).toArray();
  }

  /** Largest difference between two levels, one a draw. */
  static double[] largest(double[][] takes) {
    return Arrays.stream(takes)
        .mapToDouble(row -> Arrays.stream(row).max().orElse(0) - Arrays.stream(row).min().orElse(0))
        .toArray();
  }

  /** Pairs as places of levels, the higher take first. */
  List<int[]> places() {
    return places;
  }

  /** Standard deviation of each pair's difference, in the order of {@link #places}. */
  double[] standardErrors() {
    return errors;
  }

  /** Standard errors that a range for all pairs at once reaches to either side. */
  double reach() {
    return reach;
  }

  int draws() {
    return takes.length;
  }

  /** How far a pair's difference lies from its mean in a draw. */
  double noise(int d, int pair) {
    int[] p = places.get(pair);
    return takes[d][p[0]] - takes[d][p[1]] - (mean[p[0]] - mean[p[1]]);
  }

  static double[] means(double[][] takes) {
    double[] mean = new double[takes[0].length];
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

  private double sd(int[] p) {
    double centre = mean[p[0]] - mean[p[1]];
    double sum = 0;
    for (double[] row : takes) {
      double away = row[p[0]] - row[p[1]] - centre;
      sum += away * away;
    }
    return Math.sqrt(sum / takes.length);
  }

  private double reachOfAll() {
    double[] most = new double[takes.length];
    for (int d = 0; d < most.length; d++) {
      for (int k = 0; k < errors.length; k++) {
        if (errors[k] > 0) {
          most[d] = Math.max(most[d], Math.abs(noise(d, k)) / errors[k]);
        }
      }
    }
    Arrays.sort(most);
    return most[(int) Math.min(most.length - 1, Math.ceil(level * most.length) - 1)];
  }
}
