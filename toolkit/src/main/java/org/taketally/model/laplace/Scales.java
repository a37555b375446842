package org.taketally.model.laplace;

import java.util.Arrays;

/**
 * Standard deviations in the order of elimination.
 *
 * @param chain theta of each depth
 * @param rest theta of each level of the remainder, then 1 for each fixed column
 * @param exempt nodes of depth 0 without a deviation
 */
public record Scales(double[] chain, double[] rest, boolean[] exempt) {

  public static Scales of(SortedCells sorted, double[] theta) {
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
    return new Scales(chain, rest, sorted.exempt);
  }

  /** Theta of a node of the chain: 0 where it has no deviation. */
  public double of(int depth, int node) {
    return depth == 0 && exempt[node] ? 0 : chain[depth];
  }

  /** Lambda times a vector, in place. */
  public void apply(LevelVector vector) {
    for (int d = 0; d < chain.length; d++) {
      for (int node = 0; node < vector.chain[d].length; node++) {
        vector.chain[d][node] *= of(d, node);
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
