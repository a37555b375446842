package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.terms.Interval;

/**
 * Differences of take between every pair of levels, from posterior draws. Ranges for all pairs at
 * once are each as many standard deviations wide as the most extreme pair of a draw lies from its
 * mean in the stated share of draws.
 */
final class PairDifferences {

  /**
   * Ends of such ranges from n draws are known to about 2 standard deviations over the root of n;
   * four times that is beyond doubt.
   */
  private static final double MONTE_CARLO = 8;

  private final List<String> levels;
  private final double[][] takes;
  private final double[] mean;
  private final List<int[]> places;
  private final double[] errors;
  private final double[] most;

  /**
   * Of some levels.
   *
   * @param levels names
   * @param takes one row a draw, one take a level
   */
  PairDifferences(List<String> levels, double[][] takes) {
    this.levels = levels;
    this.takes = takes;
    this.mean = means(takes);
    this.places = places(mean);
    this.errors = places.stream().mapToDouble(this::sd).toArray();
    this.most = mostExtreme();
  }

  /**
   * Every pair, the lower take second, largest difference first.
   *
   * @param margin the margin
   * @param judged draws by which equivalence is judged; usually those of the pairs themselves
   * @param bounds how far takes could be moved by what was not assessed
   */
  List<FactorVerdict.Pair> pairs(double margin, double[][] judged, UnassessedBounds bounds) {
    double atOnce = reach(VerdictRules.AT_ONCE);
    double beyond = reach(VerdictRules.BEYOND);
    List<FactorVerdict.Pair> pairs = new ArrayList<>();
    for (int k = 0; k < errors.length; k++) {
      int[] p = places.get(k);
      double centre = mean[p[0]] - mean[p[1]];
      Interval alone =
          bounds.widened(
              DrawSummary.range(differences(judged, p), VerdictRules.ALONE), mean, p[0], p[1]);
      Interval likely = around(centre, atOnce * errors[k], VerdictRules.AT_ONCE);
      Interval veryLikely = around(centre, beyond * errors[k], VerdictRules.BEYOND);
      pairs.add(
          new FactorVerdict.Pair(
              levels.get(p[0]),
              levels.get(p[1]),
              new Estimate(centre, bounds.widened(likely, mean, p[0], p[1])),
              bounds.widened(veryLikely, mean, p[0], p[1]),
              alone,
              -margin < alone.low() && alone.high() < margin,
              DrawSummary.probability(differences(takes, p), x -> Math.abs(x) > margin)));
    }
    pairs.sort(Comparator.comparingDouble(p -> -p.difference().value()));
    return pairs;
  }

  private static Interval around(double centre, double half, double coverage) {
    return new Interval(Math.max(-1, centre - half), Math.min(1, centre + half), coverage);
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

  /** The most extreme pair, in standard errors from no difference. */
  double largestInErrors() {
    double largest = 0;
    for (int k = 0; k < errors.length; k++) {
      int[] p = places.get(k);
      largest = Math.max(largest, errors[k] > 0 ? (mean[p[0]] - mean[p[1]]) / errors[k] : 0);
    }
    return largest;
  }

  /** How often the most extreme pair of a draw lies so many errors from its mean, 0 to 1. */
  double pValueOf(double inErrors) {
    return Arrays.stream(most).filter(m -> m >= inErrors).count() / (double) most.length;
  }

  /** Whether a pair's range for all pairs at once excludes zero, the unassessed allowed for. */
  boolean anyDiffer(UnassessedBounds bounds) {
    double reach = reach(VerdictRules.AT_ONCE);
    for (int k = 0; k < errors.length; k++) {
      int[] p = places.get(k);
      Interval range = around(mean[p[0]] - mean[p[1]], reach * errors[k], VerdictRules.AT_ONCE);
      if (bounds.widened(range, mean, p[0], p[1]).low() > 0) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether other draws could decide otherwise: a range that decides ends within the Monte Carlo
   * error of its limit.
   *
   * @param pairs as found from these draws
   * @param margin the margin
   */
  boolean undecided(List<FactorVerdict.Pair> pairs, double margin) {
    double error = MONTE_CARLO / Math.sqrt(takes.length);
    double widest = 0;
    double fromZero = Double.NEGATIVE_INFINITY;
    double fromMargin = Double.NEGATIVE_INFINITY;
    double sd = Arrays.stream(errors).max().orElse(0);
    for (FactorVerdict.Pair pair : pairs) {
      widest = Math.max(widest, Math.max(-pair.equivalence().low(), pair.equivalence().high()));
      fromZero = Math.max(fromZero, pair.difference().low());
      fromMargin = Math.max(fromMargin, pair.veryLikely().low() - margin);
    }
    return Math.abs(widest - margin) < error * sd
        || Math.abs(fromZero) < error * sd
        || Math.abs(fromMargin) < error * sd;
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
  double reach(double coverage) {
    return most[(int) Math.min(most.length - 1, Math.ceil(coverage * most.length) - 1)];
  }

  int draws() {
    return takes.length;
  }

  /** Mean difference of a pair, 0 or more. */
  double difference(int pair) {
    int[] p = places.get(pair);
    return mean[p[0]] - mean[p[1]];
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

  private double[] mostExtreme() {
    double[] extreme = new double[takes.length];
    for (int d = 0; d < extreme.length; d++) {
      for (int k = 0; k < errors.length; k++) {
        if (errors[k] > 0) {
          extreme[d] = Math.max(extreme[d], Math.abs(noise(d, k)) / errors[k]);
        }
      }
    }
    Arrays.sort(extreme);
    return extreme;
  }
}
