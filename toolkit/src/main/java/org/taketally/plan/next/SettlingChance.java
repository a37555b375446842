package org.taketally.plan.next;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.verdict.VerdictRules;

/**
 * The chance that more grafts settle whether stocks differ, by the widths of their ranges.
 *
 * <pre>
 *   t_j, v_j   take of stock j now and its variance      n   grafts added on each stock
 *   v'_j       1 / (1 / v_j + n / (e p (1 - p)))         e = {@value #DESIGN_EFFECT}, for shared luck
 *   t'_j       the take found afterwards, N(t_j, v_j - v'_j) as seen from now
 *   alike      for each pair |t'_j - t'_k| + z sqrt(v'_j + v'_k) below the margin
 *   apart      for some pair |t'_j - t'_k| - z' sqrt(v'_j + v'_k) beyond it
 *   z, z'      of the range of one pair, and of all pairs at once
 *   chance     share of {@value #DRAWS} draws in which stocks are alike or some are apart
 * </pre>
 */
final class SettlingChance {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final double DESIGN_EFFECT = 1.3;
  private static final double Z = NORMAL.inverseCumulativeProbability(VerdictRules.ONE_SIDED);
  private static final int DRAWS = 400;

  private final List<Stock> stocks;
  private final double take;
  private final double margin;
  private final double[][] normals;

  /**
   * What is known of a stock.
   *
   * @param take estimate, 0 to 1
   * @param error its standard error beside the others, above 0
   */
  record Stock(double take, double error) {}

  /**
   * Of some stocks.
   *
   * @param stocks two or more
   * @param take of all grafts, above 0 and below 1
   * @param margin that would change what you do
   */
  SettlingChance(List<Stock> stocks, double take, double margin) {
    this.stocks = stocks;
    this.take = take;
    this.margin = margin;
    Random random = new Random(1);
    this.normals = new double[DRAWS][stocks.size()];
    for (double[] row : normals) {
      Arrays.setAll(row, j -> random.nextGaussian());
    }
  }

  /** With so many grafts more on each stock. */
  double with(int graftsPerStock) {
    int m = stocks.size();
    double[] after = new double[m];
    double[] moves = new double[m];
    for (int j = 0; j < m; j++) {
      double v = stocks.get(j).error() * stocks.get(j).error();
      after[j] = 1 / (1 / v + graftsPerStock / (DESIGN_EFFECT * take * (1 - take)));
      moves[j] = Math.sqrt(Math.max(0, v - after[j]));
    }
    double together = reach(m * (m - 1) / 2);
    int settled = 0;
    for (double[] row : normals) {
      double[] found = new double[m];
      Arrays.setAll(found, j -> stocks.get(j).take() + moves[j] * row[j]);
      settled += settles(found, after, together) ? 1 : 0;
    }
    return (double) settled / DRAWS;
  }

  private boolean settles(double[] found, double[] after, double together) {
    boolean alike = true;
    boolean apart = false;
    for (int j = 0; j < found.length; j++) {
      for (int k = 0; k < j; k++) {
        double gap = Math.abs(found[j] - found[k]);
        double error = Math.sqrt(after[j] + after[k]);
        alike &= gap + Z * error < margin;
        apart |= gap - together * error > margin;
      }
    }
    return alike || apart;
  }

  /** Standard errors by which one of so many pairs must clear the margin, by Bonferroni. */
  private static double reach(int pairs) {
    return NORMAL.inverseCumulativeProbability(1 - (1 - VerdictRules.BEYOND) / 2 / pairs);
  }

  /**
   * Fewest grafts on each stock for a chance, in steps of a tenth; {@code most} if none is enough.
   */
  int fewest(double chance, int least, int most) {
    double n = least;
    while (n < most && with((int) Math.ceil(n)) < chance) {
      n = Math.max(n + 1, n * 1.1);
    }
    return (int) Math.min(most, Math.ceil(n));
  }
}
