package org.taketally.model;

import java.util.Arrays;

/**
 * Numbered things picked as often as their weights ask for, systematically: each as often as its
 * share of the weight, to the nearest one above or below.
 */
public final class SystematicPicks {

  private final double[] weights;
  private final double total;

  private SystematicPicks(double[] weights) {
    this.weights = weights;
    double sum = 0; // added up as numbers() does, so that the two agree to the last digit
    for (double weight : weights) {
      sum += weight;
    }
    this.total = sum;
  }

  /**
   * Things to pick from.
   *
   * @param logWeights one each, at least one, up to a constant
   * @return the picks
   */
  public static SystematicPicks of(double[] logWeights) {
    double highest = Arrays.stream(logWeights).max().orElse(0);
    return new SystematicPicks(
        Arrays.stream(logWeights).map(weight -> Math.exp(weight - highest)).toArray());
  }

  /**
   * How many, weighing alike, would say as much.
   *
   * @return (sum of weights) squared over the sum of squares, 1 to their number
   * @see "Kish (1965), Survey Sampling, Wiley"
   */
  public double effective() {
    return total * total / Arrays.stream(weights).map(weight -> weight * weight).sum();
  }

  /**
   * Picks.
   *
   * @param count how many, at least 1
   * @param start where in the first stretch of the weight to begin, 0 to below 1
   * @return places from 0, rising; a heavy one several times
   */
  public int[] numbers(int count, double start) {
    int[] numbers = new int[count];
    double upTo = weights[0];
    int place = 0;
    for (int k = 0; k < count; k++) {
      while (place < weights.length - 1 && upTo <= (k + start) / count * total) {
        place++;
        upTo += weights[place];
      }
      numbers[k] = place;
    }
    return numbers;
  }
}
