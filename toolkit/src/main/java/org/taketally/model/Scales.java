package org.taketally.model;

import java.util.Arrays;

/**
 * Standard deviations in the order of elimination.
 *
 * @param chain theta of each depth
 * @param rest theta of each level of the remainder, then 1 for each fixed column
 */
record Scales(double[] chain, double[] rest) {

  static Scales of(SortedCells sorted, double[] theta) {
    double[] chain = new double[sorted.depths];
    for (int d = 0; d < sorted.elimination.chain().size(); d++) {
      chain[d] = theta[sorted.elimination.chain().get(d)];
    }
    double[] rest = new double[sorted.rest + sorted.patterns.width()];
    Arrays.fill(rest, 1);
    for (int f = 0; f < sorted.restOf.length; f++) {
      Arrays.fill(
          rest,
          sorted.restFrom[f],
          sorted.restFrom[f + 1],
          theta[sorted.elimination.rest().get(f)]);
    }
    return new Scales(chain, rest);
  }

  /** Lambda times a vector, in place. */
  void apply(LevelVector vector) {
    for (int d = 0; d < chain.length; d++) {
      for (int node = 0; node < vector.chain[d].length; node++) {
        vector.chain[d][node] *= chain[d];
      }
    }
    for (int a = 0; a < rest.length; a++) {
      vector.rest[a] *= rest[a];
    }
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(rest);
  }
}
