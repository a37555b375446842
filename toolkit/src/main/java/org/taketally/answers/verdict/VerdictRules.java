package org.taketally.answers.verdict;

import org.taketally.answers.confounding.Confounding;

/**
 * The rules that turn evidence into a verdict, all in one place.
 *
 * <ol>
 *   <li>{@code entangled}: under {@link Confounding#ENTANGLED_BELOW} of the information about some
 *       levels is left once everything else recorded is allowed for; the levels that can be
 *       compared get a verdict of their own if they hold most grafts.
 *   <li>Equivalence is shown if every pair of levels passes two one-sided tests at 5 % against the
 *       margin, levels left free. All must pass, so a false claim has at most 5 % for the whole set
 *       (an intersection-union test: Berger 1982, Technometrics 24, 295-300).
 *   <li>A difference is shown if the likelihood-ratio test gives chance less than {@value
 *       #CHANCE_AT_MOST}.
 *   <li>Both shown: {@code differs, but less than you care about}. Equivalence alone: {@code no
 *       practical difference}. A difference alone: {@code matters} if the largest difference
 *       exceeds the margin at least as likely as not, else {@code can't tell yet}. Neither: {@code
 *       can't tell yet}.
 * </ol>
 */
final class VerdictRules {

  /** Chance alone must give as large a statistic less often than this. */
  static final double CHANCE_AT_MOST = 0.05;

  /** Level of each of the two one-sided tests. */
  static final double ONE_SIDED = 0.05;

  /** Posterior chance needed that the largest difference exceeds the margin. */
  static final double LIKELY_BEYOND = 0.50;

  /** Power that "could have shown" stands for. */
  static final double POWER = 0.80;

  private VerdictRules() {}

  /**
   * What the evidence says of levels that can be compared.
   *
   * @param differenceShown whether chance is a poor explanation
   * @param allEquivalent whether every pair passed both one-sided tests
   * @param chanceBeyond chance that the largest difference exceeds the margin, 0 to 1
   */
  record Evidence(boolean differenceShown, boolean allEquivalent, double chanceBeyond) {}

  static Verdict verdict(Evidence evidence) {
    if (evidence.allEquivalent()) {
      return evidence.differenceShown()
          ? Verdict.LESS_THAN_YOU_CARE_ABOUT
          : Verdict.NO_PRACTICAL_DIFFERENCE;
    }
    return evidence.differenceShown() && evidence.chanceBeyond() >= LIKELY_BEYOND
        ? Verdict.MATTERS
        : Verdict.CANT_TELL_YET;
  }
}
