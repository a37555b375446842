package org.taketally.answers.verdict;

/**
 * The rules that turn evidence into a verdict, all in one place. No verdict is to be wrong in more
 * than 5 of 100 sets of records of any kind. Each claim is held to less than that, for two reasons:
 * two stocks exactly the margin apart can be wronged twice, called alike or told to matter; and
 * spreads estimated from few or thin groups come out up to a tenth too small in simulated records,
 * which makes 3 in 100 up to 5, and more so where many pairs are looked at (docs/validation.md).
 *
 * <ol>
 *   <li>{@code entangled}: under {@link
 *       org.taketally.answers.confounding.Confounding#ENTANGLED_BELOW} of the information about
 *       some levels is left once everything else recorded is allowed for; the levels that can be
 *       compared get a verdict of their own if they hold most grafts.
 *   <li><em>All equivalent</em>: every pair of levels passes two one-sided tests at 3 % against the
 *       margin (its 94 % range lies inside). All must pass, so the claim is false in at most 3 % of
 *       sets of records in which some pair lies the margin or more apart (an intersection-union
 *       test: Berger 1982, Technometrics 24, 295-300).
 *   <li><em>Differ</em>: some pair's 98 % range for all pairs at once excludes zero (Tukey's idea,
 *       by simulation: Hothorn, Bretz and Westfall 2008, Biometrical Journal 50, 346-363).
 *   <li><em>Beyond</em>: some pair's 99 % range for all pairs at once lies wholly beyond the
 *       margin, so that naming a pair that isn't happens in at most 1 in 200.
 *   <li><em>Depends</em>: pairings differ by more than chance gives once in 100, and single
 *       cultivars lie beyond the margin in both directions with probability {@value #SURE}.
 * </ol>
 *
 * <table>
 *   <caption>Verdict</caption>
 *   <tr><th></th><th>differ</th><th>not shown to differ</th></tr>
 *   <tr><td>all equivalent</td><td>differs, but less than you care about</td>
 *       <td>no practical difference</td></tr>
 *   <tr><td>beyond</td><td>matters</td><td>matters</td></tr>
 *   <tr><td>neither</td><td>differs, how much isn't settled</td><td>can't tell yet</td></tr>
 * </table>
 *
 * <p>{@code depends on the cultivar} takes the place of any of these but {@code matters}.
 */
public final class VerdictRules {

  /** Coverage of the range of one pair that decides equivalence, each end tested alone. */
  public static final double ALONE = 0.94;

  /** Coverage of the ranges for all pairs at once that decide whether any differ. */
  public static final double AT_ONCE = 0.98;

  /** Coverage of those that decide whether any lie beyond the margin. */
  public static final double BEYOND = 0.99;

  /** How sure each end of a range of {@link #ALONE} is by itself. */
  public static final double ONE_SIDED = (1 + ALONE) / 2;

  /** Probability that single cultivars lie beyond the margin in both directions. */
  static final double SURE = 0.95;

  /** Chance alone must give as much spread of pairings less often than this. */
  static final double PAIRINGS_BY_CHANCE = 0.01;

  /** Power that "could have shown" stands for. */
  static final double POWER = 0.80;

  private VerdictRules() {}

  /**
   * What the evidence says of levels that can be compared.
   *
   * @param allEquivalent whether every pair passed both one-sided tests
   * @param differ whether some two levels were shown to differ
   * @param beyondMargin whether some two were shown to differ by more than the margin
   * @param dependsOnCultivar whether a swap moves single cultivars beyond the margin both ways
   */
  record Evidence(
      boolean allEquivalent, boolean differ, boolean beyondMargin, boolean dependsOnCultivar) {}

  static Verdict verdict(Evidence evidence) {
    if (evidence.beyondMargin() && !evidence.allEquivalent()) {
      return Verdict.MATTERS;
    }
    if (evidence.dependsOnCultivar()) {
      return Verdict.DEPENDS_ON_CULTIVAR;
    }
    if (evidence.allEquivalent()) {
      return evidence.differ() ? Verdict.LESS_THAN_YOU_CARE_ABOUT : Verdict.NO_PRACTICAL_DIFFERENCE;
    }
    return evidence.differ() ? Verdict.DIFFERS_UNSETTLED : Verdict.CANT_TELL_YET;
  }
}
