package org.taketally.answers.verdict;

import java.util.Arrays;
import java.util.List;
import org.taketally.terms.Interval;

/**
 * Planned differences of take, from posterior draws. Ranges for all at once are each as many
 * standard deviations wide as the most extreme contrast of a draw lies from its mean in the stated
 * share of draws.
 */
final class ContrastDifferences {

  private final double[][] takes;
  private final List<double[]> weights;
  private final double[] mean;
  private final double[] errors;
  private final double[] most;

  /**
   * Of some contrasts.
   *
   * @param takes one row a draw, one take a level
   * @param weights for each contrast one a level
   */
  ContrastDifferences(double[][] takes, List<double[]> weights) {
    this.takes = takes;
    this.weights = weights;
    double[] level = PairDifferences.means(takes);
    this.mean = weights.stream().mapToDouble(w -> difference(w, level)).toArray();
    this.errors = new double[mean.length];
    Arrays.setAll(errors, this::sd);
    this.most = mostExtreme();
  }

  private static double difference(double[] weight, double[] takes) {
    double sum = 0;
    for (int l = 0; l < weight.length; l++) {
      sum += weight[l] * takes[l];
    }
    return sum;
  }

  double mean(int contrast) {
    return mean[contrast];
  }

  /** One a draw. */
  double[] draws(int contrast) {
    return Arrays.stream(takes)
        .mapToDouble(row -> difference(weights.get(contrast), row))
        .toArray();
  }

  /** A range that holds for all contrasts at once. */
  Interval atOnce(int contrast, double coverage) {
    int place = (int) Math.ceil(coverage * most.length) - 1;
    double half = most[Math.min(most.length - 1, Math.max(0, place))] * errors[contrast];
    return new Interval(
        Math.max(-1, mean[contrast] - half), Math.min(1, mean[contrast] + half), coverage);
  }

  private double sd(int contrast) {
    double sum = 0;
    for (double[] row : takes) {
      double away = difference(weights.get(contrast), row) - mean[contrast];
      sum += away * away;
    }
    return Math.sqrt(sum / takes.length);
  }

  private double[] mostExtreme() {
    double[] extreme = new double[takes.length];
    for (int d = 0; d < extreme.length; d++) {
      for (int k = 0; k < errors.length; k++) {
        if (errors[k] > 0) {
          double away = Math.abs(difference(weights.get(k), takes[d]) - mean[k]);
          extreme[d] = Math.max(extreme[d], away / errors[k]);
        }
      }
    }
    Arrays.sort(extreme);
    return extreme;
  }
}
