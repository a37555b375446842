package org.taketally.plan.next;

import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.verdict.FactorVerdict.Pair;

/**
 * The chance that more grafts settle pairs of stocks, by the widths of their ranges.
 *
 * <pre>
 *   d, v    difference of a pair now and its variance     n   grafts added on each stock
 *   v'      1 / (1 / v + n / (2 e p (1 - p)))      e = {@value #DESIGN_EFFECT}, for shared luck
 *   d'      the difference afterwards, N(d, v - v') as seen from now
 *   alike   |d'| + z sqrt(v') below the margin      apart   |d'| - z' sqrt(v') beyond it
 *   z, z'   of the range of one pair, and of all pairs at once
 *   settled all pairs alike (least of their chances) or any apart (largest of them)
 * </pre>
 */
final class SettlingChance {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final double DESIGN_EFFECT = 1.3;
  private static final double Z = NORMAL.inverseCumulativeProbability(0.95);

  private final List<Gap> open;
  private final double take;
  private final double margin;

  /**
   * What is known of a pair.
   *
   * @param difference estimate, -1 to 1
   * @param error its standard error, above 0
   * @param reach standard errors by which a difference must clear the margin to count as beyond it
   */
  record Gap(double difference, double error, double reach) {

    static Gap of(Pair pair) {
      double half = (pair.equivalence().high() - pair.equivalence().low()) / 2;
      double wide = (pair.veryLikely().high() - pair.veryLikely().low()) / 2;
      double error = Math.max(1e-4, half / Z);
      return new Gap(pair.difference().value(), error, Math.max(Z, wide / error));
    }

    /** Of stocks never compared: they seldom differ by more than so much. */
    static Gap unknown(double seldomMore) {
      return new Gap(0, seldomMore / Z, 2 * Z);
    }
  }

  /**
   * Of some pairs.
   *
   * @param open pairs not settled, one at least
   * @param take of all grafts, above 0 and below 1
   * @param margin that would change what you do
   */
  SettlingChance(List<Gap> open, double take, double margin) {
    this.open = open;
    this.take = take;
    this.margin = margin;
  }

  /** With so many grafts more on each stock. */
  double with(int graftsPerStock) {
    double alike = 1;
    double apart = 0;
    for (Gap gap : open) {
      double v = gap.error() * gap.error();
      double added = graftsPerStock / (2 * DESIGN_EFFECT * take * (1 - take));
      double after = 1 / (1 / v + added);
      double moves = Math.sqrt(Math.max(1e-12, v - after));
      double d = gap.difference();
      double within = margin - Z * Math.sqrt(after);
      double beyond = margin + gap.reach() * Math.sqrt(after);
      alike = Math.min(alike, within <= 0 ? 0 : inside(within, d, moves));
      apart = Math.max(apart, 1 - inside(beyond, d, moves));
    }
    return Math.min(1, alike + apart);
  }

  private static double inside(double bound, double mean, double sd) {
    return NORMAL.cumulativeProbability((bound - mean) / sd)
        - NORMAL.cumulativeProbability((-bound - mean) / sd);
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
