package org.taketally.answers.adjusted;

import java.util.Arrays;

/**
 * Draws picked as often as their weights ask for, systematically: as many as would, drawn evenly,
 * say as much (Kish's effective number), so that error by chance is not thought smaller than it is.
 *
 * @param numbers places of the draws picked, in order; a heavy one several times
 * @param effective (sum of weights) squared over the sum of squares, 1 to the number of draws
 * @see "Kish (1965), Survey Sampling, Wiley"
 */
record PickedDraws(int[] numbers, double effective) {

  /**
   * Picks.
   *
   * @param logWeights one a draw, up to a constant
   */
  static PickedDraws of(double[] logWeights) {
    double highest = Arrays.stream(logWeights).max().orElse(0);
    double[] weights = Arrays.stream(logWeights).map(w -> Math.exp(w - highest)).toArray();
    double total = Arrays.stream(weights).sum();
    double effective = total * total / Arrays.stream(weights).map(w -> w * w).sum();
    int[] numbers = new int[Math.max(1, (int) effective)];
    double upTo = weights[0];
    int place = 0;
    for (int k = 0; k < numbers.length; k++) {
      while (place < weights.length - 1 && upTo < (k + 0.5) / numbers.length * total) {
        place++;
        upTo += weights[place];
      }
      numbers[k] = place;
    }
    return new PickedDraws(numbers, effective);
  }

  /** The picked ones of what belongs to each draw. */
  <T> T[] of(T[] each) {
    T[] own = Arrays.copyOf(each, numbers.length);
    Arrays.setAll(own, k -> each[numbers[k]]);
    return own;
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }
}
