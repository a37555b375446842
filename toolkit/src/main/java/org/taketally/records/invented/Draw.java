package org.taketally.records.invented;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Random draws that are the same on every machine: the generator is a published one (Panneton,
 * L'Ecuyer and Matsumoto 2006) and functions are those of {@link StrictMath}.
 */
final class Draw {

  private final RandomGenerator random;

  Draw(long seed) {
    random = new Well19937c(seed);
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  /** A whole number, both ends included. */
  int between(int low, int high) {
    return low + random.nextInt(high - low + 1);
  }

  double normal(double mean, double standardDeviation) {
    return mean + standardDeviation * random.nextGaussian();
  }

  <T> T oneOf(List<T> items) {
    return items.get(random.nextInt(items.size()));
  }

  /** One of the keys, with chances in proportion to the weights. */
  <T> T weighted(Map<T, Double> weights) {
    double total = weights.values().stream().mapToDouble(Double::doubleValue).sum();
    double left = random.nextDouble() * total;
    T last = null;
    for (Map.Entry<T, Double> entry : weights.entrySet()) {
      last = entry.getKey();
      left -= entry.getValue();
      if (left < 0) {
        break;
      }
    }
    return last;
  }

  /** A shuffled copy (Fisher and Yates). */
  <T> List<T> shuffled(List<T> items) {
    List<T> copy = new ArrayList<>(items);
    for (int i = copy.size() - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      T held = copy.get(i);
      copy.set(i, copy.get(j));
      copy.set(j, held);
    }
    return copy;
  }
}
