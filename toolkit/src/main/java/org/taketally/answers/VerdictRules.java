package org.taketally.answers;

/**
 * The rules that turn evidence into a verdict, all in one place.
 *
 * <ol>
 *   <li>{@code entangled}: the levels don't fall into one comparable group, or under {@value
 *       Entanglement#ENTANGLED_BELOW} of the information about them is left once everything else is
 *       allowed for.
 *   <li>Equivalence is shown if every pair of levels passes two one-sided tests at 5 % against the
 *       margin, and the chance that the largest difference is below the margin is at least {@value
 *       #SURE_WITHIN}. The first keeps a false claim to at most 5 % for the whole set (an
 *       intersection of tests), the second asks that the posterior agrees.
 *   <li>A difference is shown if the likelihood-ratio test gives chance less than {@value
 *       #CHANCE_AT_MOST}.
 *   <li>Both shown: {@code differs, but less than you care about}. Equivalence alone: {@code no
 *       practical difference}. A difference alone: {@code matters} if the largest difference
 *       exceeds the margin more likely than not, else {@code can't tell yet}. Neither: {@code can't
 *       tell yet}.
 * </ol>
 */
final class VerdictRules {

  /** Chance alone must give as large a statistic less often than this. */
  static final double CHANCE_AT_MOST = 0.05;

  /** Level of each of the two one-sided tests. */
  static final double ONE_SIDED = 0.05;

  /** Posterior chance needed that the whole spread is below the margin. */
  static final double SURE_WITHIN = 0.90;

  /** Posterior chance needed that the largest difference exceeds the margin. */
  static final double LIKELY_BEYOND = 0.50;

  /** Power that "could have shown" stands for. */
  static final double POWER = 0.80;

  private VerdictRules() {}

  /**
   * What the evidence says.
   *
   * @param entangled whether levels can't be compared
   * @param differenceShown whether chance is a poor explanation
   * @param allEquivalent whether every pair passed both one-sided tests
   * @param chanceWithin chance that the largest difference is below the margin, 0 to 1
   */
  record Evidence(
      boolean entangled, boolean differenceShown, boolean allEquivalent, double chanceWithin) {}

  static Verdict verdict(Evidence evidence) {
    if (evidence.entangled()) {
      return Verdict.ENTANGLED;
    }
    if (evidence.allEquivalent() && evidence.chanceWithin() >= SURE_WITHIN) {
      return evidence.differenceShown()
          ? Verdict.LESS_THAN_YOU_CARE_ABOUT
          : Verdict.NO_PRACTICAL_DIFFERENCE;
    }
    boolean large = 1 - evidence.chanceWithin() > LIKELY_BEYOND;
    return evidence.differenceShown() && large ? Verdict.MATTERS : Verdict.CANT_TELL_YET;
  }
}
