package org.taketally.answers.counts;

import java.util.Optional;

/**
 * Whether the strata of a comparison tell the same story.
 *
 * @param strata how many strata say anything about the odds ratio
 * @param breslowDay Breslow and Day's test that their odds ratios are equal; empty with fewer than
 *     two such strata, or when the pooled ratio is not finite
 * @param tarone the same with Tarone's correction, on which {@link #verdict} rests
 */
public record Agreement(int strata, Optional<ChiSquare> breslowDay, Optional<ChiSquare> tarone) {

  /** Strata are said to disagree when chance alone would part them so far less often than this. */
  public static final double DISAGREE_BELOW = 0.05;

  /** What can be said about the strata. */
  public enum Verdict {
    /** They differ no more than chance would have it. */
    AGREE,
    /** They differ more than chance would have it: one pooled ratio hides that. */
    DISAGREE,
    /** There is nothing to compare. */
    NOT_COMPARABLE
  }

  /**
   * What can be said.
   *
   * @return the verdict at {@link #DISAGREE_BELOW}
   */
  public Verdict verdict() {
    return tarone
        .map(test -> test.pValue() < DISAGREE_BELOW ? Verdict.DISAGREE : Verdict.AGREE)
        .orElse(Verdict.NOT_COMPARABLE);
  }

  /**
   * Tarone's chance.
   *
   * @return how often chance alone parts the strata so far, 0 to 1; NaN if they can't be compared
   */
  public double pValue() {
    return tarone.map(ChiSquare::pValue).orElse(Double.NaN);
  }
}
