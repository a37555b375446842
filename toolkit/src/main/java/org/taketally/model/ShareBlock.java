package org.taketally.model;

import java.util.Arrays;
import java.util.List;
import org.taketally.cells.Factor;

/**
 * The shares that levels of the compared column have among the grafts of each group: one column of
 * X a level, the same for all cells of a group.
 *
 * @param compared the compared column
 * @param group the column of groups
 * @param labels levels whose shares enter
 * @param shares one row a group, one column a label, 0 to 1
 * @param mean the same of all grafts
 * @param codes group of each cell
 */
record ShareBlock(
    String compared,
    String group,
    List<String> labels,
    double[][] shares,
    double[] mean,
    int[] codes)
    implements FixedBlock {

  /** Shares of all levels but the base, of the grafts of each group. */
  static ShareBlock of(LevelBlock compared, String group, LevelsInUse groups, int[] grafts) {
    int[] place = new int[compared.levels().size()];
    Arrays.fill(place, Factor.MISSING);
    List<String> labels = compared.labels();
    for (int label = 0; label < labels.size(); label++) {
      place[compared.levels().indexOf(labels.get(label))] = label;
    }
    double[][] shares = new double[groups.levels().size()][labels.size()];
    double[] mean = new double[labels.size()];
    double[] inGroup = new double[shares.length];
    double total = 0;
    for (int i = 0; i < grafts.length; i++) {
      int label = place[compared.codes()[i]];
      inGroup[groups.codes()[i]] += grafts[i];
      total += grafts[i];
      if (label != Factor.MISSING) {
        shares[groups.codes()[i]][label] += grafts[i];
        mean[label] += grafts[i];
      }
    }
    for (int g = 0; g < shares.length; g++) {
      for (int label = 0; label < mean.length; label++) {
        shares[g][label] /= inGroup[g];
      }
    }
    for (int label = 0; label < mean.length; label++) {
      mean[label] /= total;
    }
    return new ShareBlock(compared.term(), group, labels, shares, mean, groups.codes());
  }

  /** Part of the spread of a level's use that lies within groups, 0 to 1. */
  double within(int label, int[] grafts) {
    double across = 0;
    double total = 0;
    for (int i = 0; i < codes.length; i++) {
      double away = shares[codes[i]][label] - mean[label];
      across += grafts[i] * away * away;
      total += grafts[i];
    }
    return 1 - across / total / (mean[label] * (1 - mean[label]));
  }

  /** With some of the labels only. */
  ShareBlock only(List<String> kept) {
    int[] places = kept.stream().mapToInt(labels::indexOf).toArray();
    double[][] fewer = new double[shares.length][];
    for (int g = 0; g < fewer.length; g++) {
      fewer[g] = pick(shares[g], places);
    }
    return new ShareBlock(compared, group, kept, fewer, pick(mean, places), codes);
  }

  private static double[] pick(double[] values, int[] places) {
    return Arrays.stream(places).mapToDouble(place -> values[place]).toArray();
  }

  @Override
  public String term() {
    return "share of %s in %s".formatted(compared, group);
  }

  @Override
  public int codeCount() {
    return shares.length;
  }

  @Override
  public void fill(int code, double[] row, int at) {
    System.arraycopy(shares[code], 0, row, at, labels.size());
  }

  /** Of a group that need not occur: the shares of all grafts. */
  @Override
  public void fill(String level, double[] row, int at) {
    System.arraycopy(mean, 0, row, at, labels.size());
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return term().hashCode();
  }
}
