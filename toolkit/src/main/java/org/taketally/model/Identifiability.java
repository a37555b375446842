package org.taketally.model;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.taketally.model.CannotFit.Reason;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.laplace.Patterns;
import org.taketally.model.numeric.SmallMatrix;

/** Refuses fixed columns whose effects the cells can't tell, before any search. */
final class Identifiability {

  /** A column is a sum of earlier ones if this share of its spread is left. */
  private static final double LEFT = 1e-9;

  private Identifiability() {}

  static void check(TakeDesign design, ModelData evidence) {
    for (FixedBlock block : design.blocks()) {
      if (block instanceof LevelBlock levels) {
        refuseSeparatedLevels(levels, evidence);
      }
    }
    refuseAliased(design, evidence);
  }

  private static void refuseSeparatedLevels(LevelBlock block, ModelData evidence) {
    long[] grafts = new long[block.levels().size()];
    long[] takes = new long[grafts.length];
    for (int i = 0; i < evidence.cells(); i++) {
      grafts[block.codes()[i]] += evidence.grafts()[i];
      takes[block.codes()[i]] += evidence.takes()[i];
    }
    List<String> extreme = new ArrayList<>();
    for (int k = 0; k < grafts.length; k++) {
      if (takes[k] == 0 || takes[k] == grafts[k]) {
        extreme.add("%s (%,d of %,d took)".formatted(block.levels().get(k), takes[k], grafts[k]));
      }
    }
    if (!extreme.isEmpty()) {
      throw new CannotFit(
          Reason.SEPARATED,
          List.of(block.term()),
          "%s: %s: all or none took, so its effect has no finite estimate; let %s vary instead of adjusting for it, or join the level with another"
              .formatted(block.term(), String.join(", ", extreme), block.term()));
    }
  }

  private static void refuseAliased(TakeDesign design, ModelData evidence) {
    List<Integer> aliased = aliased(evidence.patterns(), evidence.grafts());
    if (!aliased.isEmpty()) {
      int j = aliased.get(0);
      List<Integer> kept = IntStream.range(1, j).boxed().toList();
      double[][] spread = centredProducts(evidence.patterns(), evidence.grafts());
      List<String> terms = terms(design);
      double[] weights = onEarlier(spread, kept, j);
      throw aliased(design.names().get(j), terms, j, earlierTerms(terms, kept, weights, spread, j));
    }
  }

  /** Columns of X that are sums of earlier ones. */
  static List<Integer> aliased(Patterns patterns, int[] grafts) {
    double[][] spread = centredProducts(patterns, grafts);
    List<Integer> kept = new ArrayList<>();
    List<Integer> aliased = new ArrayList<>();
    for (int j = 1; j < patterns.width(); j++) {
      double[] weights = onEarlier(spread, kept, j);
      double left = spread[j][j];
      for (int k = 0; k < weights.length; k++) {
        left -= weights[k] * spread[kept.get(k)][j];
      }
      (left > LEFT * spread[j][j] ? kept : aliased).add(j);
    }
    return aliased;
  }

  private static CannotFit aliased(
      String name, List<String> terms, int column, Set<String> earlier) {
    String term = terms.get(column);
    List<String> columns = new ArrayList<>(earlier);
    columns.add(term);
    return new CannotFit(
        Reason.ALIASED,
        columns,
        "%s can't be told apart from %s: whenever one changes in these records, so does the other; leave %s out, or let it vary"
            .formatted(name, String.join(" and ", earlier), term));
  }

  private static Set<String> earlierTerms(
      List<String> terms, List<Integer> kept, double[] weights, double[][] spread, int column) {
    Set<String> earlier = new LinkedHashSet<>();
    for (int k = 0; k < weights.length; k++) {
      int other = kept.get(k);
      if (Math.abs(weights[k]) * Math.sqrt(spread[other][other])
          > 1e-6 * Math.sqrt(spread[column][column])) {
        earlier.add(terms.get(other));
      }
    }
    return earlier;
  }

  private static double[] onEarlier(double[][] spread, List<Integer> kept, int column) {
    int[] index = kept.stream().mapToInt(Integer::intValue).toArray();
    double[] right = new double[index.length];
    for (int k = 0; k < index.length; k++) {
      right[k] = spread[index[k]][column];
    }
    return index.length == 0 ? right : SmallMatrix.of(SmallMatrix.part(spread, index)).solve(right);
  }

  /** Sums of products of the columns of X less their means, single grafts counted. */
  private static double[][] centredProducts(Patterns patterns, int[] grafts) {
    double[] weight = patterns.sums(grafts);
    int width = patterns.width();
    double[] mean = new double[width];
    double total = 0;
    for (int r = 0; r < weight.length; r++) {
      total += weight[r];
      for (int j = 0; j < width; j++) {
        mean[j] += weight[r] * patterns.rows()[r][j];
      }
    }
    double[][] products = new double[width][width];
    double[] centred = new double[width];
    for (int r = 0; r < weight.length; r++) {
      for (int j = 0; j < width; j++) {
        centred[j] = patterns.rows()[r][j] - mean[j] / total;
      }
      for (int i = 0; i < width; i++) {
        for (int j = 0; j < width; j++) {
          products[i][j] += weight[r] * centred[i] * centred[j];
        }
      }
    }
    return products;
  }

  private static List<String> terms(TakeDesign design) {
    List<String> terms = new ArrayList<>(List.of(FixedEffect.INTERCEPT));
    for (FixedBlock block : design.blocks()) {
      for (int k = 0; k < block.width(); k++) {
        terms.add(block.term());
      }
    }
    return terms;
  }
}
