package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.taketally.model.numeric.SmallMatrix;
import org.taketally.model.numeric.Vectors;

/** Reads the comparison within and across groups off a fit. */
final class WithinReader {

  private final TakeDesign design;
  private final double[] beta;
  private final double[][] covariance;

  WithinReader(TakeDesign design, double[] beta, double[][] covariance) {
    this.design = design;
    this.beta = beta;
    this.covariance = covariance;
  }

  WithinComparison read(String compared, Map<String, WithinComparison.Unused> unused) {
    List<String> levels = design.levels(compared);
    int[] own = places(design.blockOf(compared));
    List<WithinComparison.Across> across = new ArrayList<>();
    for (FixedBlock block : design.blocks()) {
      if (block instanceof ShareBlock shares) {
        across.add(across(shares, levels, own));
      }
    }
    return new WithinComparison(
        compared,
        levels,
        IntStream.of(own).mapToObj(j -> beta[j]).toList(),
        lists(SmallMatrix.part(covariance, own)),
        across,
        unused);
  }

  private int[] places(FixedBlock block) {
    int at = design.startOf(block);
    return IntStream.range(at, at + block.width()).toArray();
  }

  /** delta + gamma, with the covariance of the sum. */
  private WithinComparison.Across across(ShareBlock shares, List<String> levels, int[] own) {
    int[] more = places(shares);
    int[] base =
        shares.labels().stream().mapToInt(label -> own[levels.indexOf(label) - 1]).toArray();
    double[] sum = new double[more.length];
    double[][] spread = new double[more.length][more.length];
    for (int i = 0; i < more.length; i++) {
      sum[i] = beta[base[i]] + beta[more[i]];
      for (int j = 0; j < more.length; j++) {
        spread[i][j] =
            covariance[base[i]][base[j]]
                + covariance[base[i]][more[j]]
                + covariance[more[i]][base[j]]
                + covariance[more[i]][more[j]];
      }
    }
    return new WithinComparison.Across(
        shares.group(),
        shares.labels(),
        Arrays.stream(sum).boxed().toList(),
        lists(spread),
        wald(more));
  }

  private LevelTest wald(int[] places) {
    double[] gamma = IntStream.of(places).mapToDouble(j -> beta[j]).toArray();
    SmallMatrix root = SmallMatrix.ofSteadied(SmallMatrix.part(covariance, places));
    double chiSquare = Vectors.dot(gamma, root.solve(gamma));
    return new LevelTest(
        chiSquare,
        gamma.length,
        ChiSquaredDistribution.of(gamma.length).survivalProbability(chiSquare));
  }

  private static List<List<Double>> lists(double[][] matrix) {
    return Arrays.stream(matrix).map(row -> Arrays.stream(row).boxed().toList()).toList();
  }
}
