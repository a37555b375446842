package org.taketally.records.invented;

import org.apache.commons.math3.random.MersenneTwister;

/**
 * Draws from the Mersenne Twister exactly as the standard library of Python makes them, so that a
 * script there writes the same bytes from the same seed.
 */
final class SeededDraws {

  private final MersenneTwister bits;
  private double waiting = Double.NaN;

  SeededDraws(long seed) {
    if (seed < 0 || seed > 0xFFFFFFFFL) {
      throw new IllegalArgumentException("seed must be 0 to 4294967295, got " + seed);
    }
    this.bits = new MersenneTwister(new int[] {(int) seed});
  }

  /** From 0 to below 1, 53 bits. */
  double next() {
    int high = bits.nextInt() >>> 5;
    int low = bits.nextInt() >>> 6;
    return (high * 67108864.0 + low) / 9007199254740992.0;
  }

  /** Standard normal, two from two uniforms. */
  double nextGaussian() {
    if (!Double.isNaN(waiting)) {
      double second = waiting;
      waiting = Double.NaN;
      return second;
    }
    double angle = next() * 2 * Math.PI;
    double radius = Math.sqrt(-2.0 * Math.log(1.0 - next()));
    waiting = Math.sin(angle) * radius;
    return Math.cos(angle) * radius;
  }

  private int below(int bound) {
    int length = 32 - Integer.numberOfLeadingZeros(bound);
    int value;
    do {
      value = bits.nextInt() >>> (32 - length);
    } while (value >= bound);
    return value;
  }

  /** 0 to count - 1 in random order. */
  int[] shuffled(int count) {
    int[] order = new int[count];
    for (int i = 0; i < count; i++) {
      order[i] = i;
    }
    for (int i = count - 1; i > 0; i--) {
      int j = below(i + 1);
      int swap = order[i];
      order[i] = order[j];
      order[j] = swap;
    }
    return order;
  }

  /** Places, with cumulative weights. */
  int[] choices(double[] upTo, int count) {
    int[] chosen = new int[count];
    int last = upTo.length - 1;
    for (int c = 0; c < count; c++) {
      double wanted = next() * upTo[last];
      int low = 0;
      int high = last;
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (wanted < upTo[middle]) {
          high = middle;
        } else {
          low = middle + 1;
        }
      }
      chosen[c] = low;
    }
    return chosen;
  }

  int[] choices(int[] values, double[] upTo, int count) {
    int[] chosen = choices(upTo, count);
    for (int c = 0; c < count; c++) {
      chosen[c] = values[chosen[c]];
    }
    return chosen;
  }

  int[] evenChoices(int values, int count) {
    int[] chosen = new int[count];
    for (int c = 0; c < count; c++) {
      chosen[c] = (int) Math.floor(next() * values);
    }
    return chosen;
  }
}
