package org.taketally.answers.advice;

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
    double below = difference.value() - difference.low();
    if (!(difference.value() > 0)) {
      return 0;
    }
    double reach = NORMAL.inverseSurvivalProbability((1 - difference.interval().coverage()) / 2);
    double z = below > 0 ? difference.value() * reach / below : Double.POSITIVE_INFINITY;
    return Math.max(0, 1 - questions * NORMAL.survivalProbability(z));
  }
}
