package org.taketally.answers.advice;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.Estimate;

/** How sure the sign of a difference is, when several questions were looked at (Bonferroni). */
final class Sureness {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private final int questions;

  Sureness(int questions) {
    this.questions = questions;
  }

  /**
   * Sureness that a difference lies above zero. Takes its likely range for that of a normal
   * distribution, as wide below the value as its lower limit says.
   *
   * @param difference any difference with its likely range
   * @return 0 to 1
   */
  double above(Estimate difference) {
    return above(difference, 1);
  }

  /**
   * Sureness that a fall between two points of a curve lies above zero, where the points were
   * chosen by looking at the curve: a curve that bends freely shows a fall somewhere by chance
   * alone. Holds for every pair of its points at once (Scheff&eacute; 1953, Biometrika 40, 87-104),
   * halved because only falls are looked for.
   *
   * @param fall take at the earlier point minus take at the later, with its likely range
   * @param freedom degrees of freedom of the curve, at least 1; 1 is a straight line
   * @return 0 to 1
   */
  double above(Estimate fall, int freedom) {
    double below = fall.value() - fall.low();
    if (!(fall.value() > 0)) {
      return 0;
    }
    double reach = NORMAL.inverseSurvivalProbability((1 - fall.interval().coverage()) / 2);
    double z = below > 0 ? fall.value() * reach / below : Double.POSITIVE_INFINITY;
    double chance = ChiSquaredDistribution.of(freedom).survivalProbability(z * z) / 2;
    return Math.max(0, 1 - questions * chance);
  }
}
