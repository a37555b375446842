package org.taketally.answers.advice;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.FDistribution;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;

/** A column of numbers by groups of grafts: each group's mean, and how far these lie apart. */
final class GroupMeans {

  private final Cells cells;
  private final Factor group;
  private final double[] grafts;
  private final double[] means;
  private final double total;
  private final double inside;
  private final double between;

  GroupMeans(Cells cells, Measure number, Factor group) {
    this.cells = cells;
    this.group = group;
    int[] used =
        IntStream.range(0, cells.size())
            .filter(i -> group.code(i) != Factor.MISSING && !Double.isNaN(number.value(i)))
            .toArray();
    this.grafts = sums(used, i -> 1);
    this.total = IntStream.of(used).mapToDouble(cells::grafts).sum();
    double[] sums = sums(used, number::value);
    double mean = IntStream.range(0, sums.length).mapToDouble(g -> sums[g]).sum() / total;
    this.means = IntStream.range(0, sums.length).mapToDouble(g -> sums[g] / grafts[g]).toArray();
    this.inside =
        IntStream.of(used)
            .mapToDouble(i -> cells.grafts(i) * square(number.value(i) - means[group.code(i)]))
            .sum();
    this.between = seen().mapToDouble(g -> grafts[g] * square(means[g] - mean)).sum();
  }

  private double[] sums(int[] used, IntToDoubleFunction of) {
    double[] sums = new double[group.size()];
    for (int i : used) {
      sums[group.code(i)] += cells.grafts(i) * of.applyAsDouble(i);
    }
    return sums;
  }

  private static double square(double value) {
    return value * value;
  }

  private IntStream seen() {
    return IntStream.range(0, grafts.length).filter(g -> grafts[g] > 0);
  }

  int groups() {
    return (int) seen().count();
  }

  /** Part of the spread of the numbers that lies within groups, 0 to 1; 0 where there is none. */
  double within() {
    return inside + between > 0 ? inside / (inside + between) : 0;
  }

  /** How often dealing grafts by lot gives means as far apart (analysis of variance). */
  double byLot() {
    int groups = groups();
    double spare = total - groups;
    if (groups < 2 || spare < 1 || inside + between <= 0) {
      return 1;
    }
    double ratio = between / (groups - 1) / (inside / spare);
    return FDistribution.of(groups - 1, spare).survivalProbability(ratio);
  }

  /** Each cell's group's mean; NaN where the group isn't known. */
  Measure measure(String name) {
    return new Measure(
        name,
        IntStream.range(0, cells.size())
            .mapToDouble(i -> group.code(i) == Factor.MISSING ? Double.NaN : means[group.code(i)])
            .toArray());
  }
}
