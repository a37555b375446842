package org.taketally.plan.size;

import org.taketally.answers.counts.DifferencePower;
import org.taketally.answers.counts.MarginPower;
import org.taketally.answers.counts.MarginPower.Question;
import org.taketally.plan.size.TrialQuestion.Claim;

/**
 * Power of a claim where grafts count one by one: by the normal approximation, and by exact sums
 * where it misstates the chance because few takes or few failures of a stock are to be expected.
 */
final class SingleGraftsPower {

  /** Takes, or failures, of a stock from which on the two agree to about a point. */
  private static final double FEW = 20;

  /** No trial has more grafts of a stock. */
  private static final double MOST = 1e9;

  /** So many steps are taken from a number to its half where the chance is far more than wanted. */
  private static final int STEPS = 50;

  private final TrialQuestion question;
  private final Claim claim;
  private final double second;
  private final double ratio;
  private final double worth;

  SingleGraftsPower(TrialQuestion question, Claim claim) {
    this.question = question;
    this.claim = claim;
    this.second = claim == Claim.DIFFERENCE ? question.secondTakeAsMixed() : question.firstTake();
    this.ratio = question.secondPerFirst();
    this.worth = question.worth(second, claim == Claim.DIFFERENCE ? ratio : 1);
  }

  /** Chance that so many grafts on the first stock show the claim. */
  double chance(int first) {
    if (first < question.fewestJudged()) {
      return 0;
    }
    return isFew(first) ? exact(first) : normal(first);
  }

  /**
   * Grafts on the first stock from which on the chance is that wanted; need not be whole.
   *
   * @throws IllegalArgumentException if that are more than any trial has
   */
  double grafts() {
    double grafts = Math.max(question.fewestJudged(), least());
    requireTrial(Math.max(grafts, question.secondGrafts(grafts)) <= MOST);
    return grafts;
  }

  private double least() {
    int n = (int) Math.ceil(Math.min(MOST, many()));
    if (chance(n) < question.power()) {
      return byNormal();
    }
    double ample = (1 + question.power()) / 2;
    while (chance(fewer(n)) > ample) {
      n = fewer(n);
    }
    while (chance(n - 1) >= question.power()) {
      n--;
    }
    return n;
  }

  private void requireTrial(boolean possible) {
    if (!possible && claim == Claim.DIFFERENCE) {
      throw new IllegalArgumentException(
          "to tell takes of %s and %s apart would take more than %,.0f grafts on one stock; suppose takes farther apart, a lower chance, or numbers of grafts on the two stocks nearer to each other"
              .formatted(question.firstTake(), second, MOST));
    }
    if (!possible) {
      throw new IllegalArgumentException(
          "to show no difference of %s would take more than %,.0f grafts on one stock; give a wider margin, a lower chance, or numbers of grafts on the two stocks nearer to each other"
              .formatted(question.margin(), MOST));
    }
  }

  private static int fewer(int grafts) {
    return grafts - Math.max(1, grafts / STEPS);
  }

  private double byNormal() {
    requireTrial(normal(MOST) >= question.power());
    return claim == Claim.DIFFERENCE
        ? difference().grafts(question.firstTake(), second, question.power()) / worth
        : equivalence().grafts(second, second, question.power()) * (1 + 1 / ratio) / 2 / worth;
  }

  private double normal(double first) {
    return claim == Claim.DIFFERENCE
        ? difference().power(question.firstTake(), second, first * worth)
        : equivalence().power(second, second, first * 2 / (1 + 1 / ratio) * worth);
  }

  private DifferencePower difference() {
    return DifferencePower.twoSided(TrialQuestion.FALSE_DIFFERENCE).withRatio(ratio);
  }

  private MarginPower equivalence() {
    return new MarginPower(
        Question.MUCH_THE_SAME, question.margin(), TrialQuestion.FALSE_EQUIVALENCE);
  }

  private double exact(int first) {
    FewGraftsPower power =
        new FewGraftsPower(
            lot(first, question.firstTake()), lot(question.secondGrafts(first), second));
    return claim == Claim.DIFFERENCE
        ? power.differs(TrialQuestion.FALSE_DIFFERENCE)
        : power.equivalent(question.margin(), TrialQuestion.FALSE_EQUIVALENCE);
  }

  private FewGraftsPower.Lot lot(double grafts, double take) {
    return new FewGraftsPower.Lot((int) Math.max(1, Math.round(grafts * worth)), take);
  }

  private boolean isFew(int first) {
    return first < many() && first * Math.max(1, ratio) * worth < MOST;
  }

  /** Grafts on the first stock of which neither takes nor failures of either stock are few. */
  private double many() {
    return FEW / worth / Math.min(rarer(question.firstTake()), rarer(second) * ratio);
  }

  private static double rarer(double take) {
    return Math.min(take, 1 - take);
  }
}
