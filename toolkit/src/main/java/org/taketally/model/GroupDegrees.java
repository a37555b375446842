package org.taketally.model;

import org.taketally.model.laplace.Patterns;

/** How many independent units a column of groups leaves for effects that change between them. */
final class GroupDegrees {

  /** A fixed column that changes less within groups changes between them. */
  private static final double LEAST_WITHIN = 0.05;

  private GroupDegrees() {}

  static int of(TakeDesign design, int[] grafts, String groups) {
    int[] codes = design.codes(groups);
    int count = java.util.Arrays.stream(codes).max().orElse(0) + 1;
    Patterns patterns = design.patterns();
    int between = 1;
    for (int j = 1; j < patterns.width(); j++) {
      between += withinShare(patterns, j, codes, count, grafts) < LEAST_WITHIN ? 1 : 0;
    }
    return Math.max(1, count - between);
  }

  /** Part of the spread of a column of X that lies within groups. */
  private static double withinShare(
      Patterns patterns, int column, int[] codes, int count, int[] grafts) {
    double[] n = new double[count];
    double[] sum = new double[count];
    double total = 0;
    double mean = 0;
    double square = 0;
    for (int i = 0; i < codes.length; i++) {
      double x = patterns.rows()[patterns.codes()[i]][column];
      n[codes[i]] += grafts[i];
      sum[codes[i]] += grafts[i] * x;
      total += grafts[i];
      mean += grafts[i] * x;
      square += grafts[i] * x * x;
    }
    double within = square;
    for (int g = 0; g < count; g++) {
      within -= n[g] > 0 ? sum[g] * sum[g] / n[g] : 0;
    }
    return within / (square - mean * mean / total);
  }
}
