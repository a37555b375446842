package org.taketally.model;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.model.laplace.Patterns;

/** How many independent units a column of groups leaves for effects that change between them. */
final class GroupDegrees {

  /** A fixed column that changes less within groups changes between them. */
  private static final double LEAST_WITHIN = 0.05;

  private GroupDegrees() {}

  static int of(TakeDesign design, int[] grafts, String groups) {
    int[] codes = design.codes(groups);
    int count = count(codes);
    Patterns patterns = design.patterns();
    int between = 1;
    for (int j = 1; j < patterns.width(); j++) {
      between += withinShare(patterns, j, codes, count, grafts) < LEAST_WITHIN ? 1 : 0;
    }
    return Math.max(1, count - between);
  }

  /**
   * Of the varying columns between whose groups alone a column changes, the one with the fewest
   * degrees of freedom.
   */
  static Optional<BetweenGroups> between(
      TakeDesign design, int[] grafts, String column, List<String> varying) {
    List<String> names = design.names();
    int[] places =
        IntStream.range(1, names.size())
            .filter(j -> names.get(j).startsWith(column + ": "))
            .toArray();
    return varying.stream()
        .filter(groups -> places.length > 0 && changesBetween(design, grafts, places, groups))
        .map(
            groups ->
                new BetweenGroups(groups, count(design.codes(groups)), of(design, grafts, groups)))
        .min(Comparator.comparingInt(BetweenGroups::degrees));
  }

  private static boolean changesBetween(
      TakeDesign design, int[] grafts, int[] places, String groups) {
    int[] codes = design.codes(groups);
    return Arrays.stream(places)
        .allMatch(
            j -> withinShare(design.patterns(), j, codes, count(codes), grafts) < LEAST_WITHIN);
  }

  private static int count(int[] codes) {
    return Arrays.stream(codes).max().orElse(0) + 1;
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
