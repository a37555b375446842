package org.taketally.plan.size;

import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.verdict.VerdictRules;

/**
 * What a trial of two stocks is to show. Immutable: {@code TrialQuestion.of(0.8,
 * 0.7).withPower(0.9)}.
 *
 * @param firstTake supposed take on the first stock, above 0 and below 1
 * @param secondTake supposed take on the second stock, above 0 and below 1
 * @param margin difference that would change what you do, above 0 and below 1; default 0.10
 * @param power chance wanted that the trial shows it, above 0.05 and below 1; default 0.80
 * @param secondPerFirst grafts on the second stock per graft on the first, above 0; default 1
 * @param offType share of seedlings that aren't the stock they are sold as, 0 or more and below 1:
 *     they take like the other stock, so that a difference looks smaller; default 0
 * @param sharedSpread how far take differs between the hands, days and cultivars that both stocks
 *     share alike: standard deviation of their true takes, 0 to {@link #mostSharedSpread}; default
 *     0. What differs between them is taken out, so fewer grafts are needed
 */
public record TrialQuestion(
    double firstTake,
    double secondTake,
    double margin,
    double power,
    double secondPerFirst,
    double offType,
    double sharedSpread) {

  /** Chance of a false difference, both sides together, as the verdict holds it. */
  public static final double FALSE_DIFFERENCE = 1 - VerdictRules.AT_ONCE;

  /** Chance of error of each of the two one-sided tests of equivalence, as the verdict holds it. */
  public static final double FALSE_EQUIVALENCE = 1 - VerdictRules.ONE_SIDED;

  /** A chance to show something must be above that of showing it by luck alone. */
  public static final double LEAST_POWER = 0.05;

  /** Variance of single grafts at takes of 95 and of 5 %. */
  private static final double NEAR = 0.0475 + 1e-12;

  public TrialQuestion {
    requireTake(firstTake);
    requireTake(secondTake);
    if (!(margin > 0 && margin < 1)) {
      throw new IllegalArgumentException(
          "the margin must lie between 0 and 1, e.g. 0.1 for 10 points, got " + margin);
    }
    if (!(power > LEAST_POWER && power < 1)) {
      throw new IllegalArgumentException(
          "the chance wanted must lie between %s and 1, e.g. 0.8 for 8 trials in 10, got %s"
              .formatted(LEAST_POWER, power));
    }
    if (!(secondPerFirst > 0 && secondPerFirst < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "grafts on the second stock per graft on the first must be above 0, got "
              + secondPerFirst);
    }
    if (!(offType >= 0 && offType < 1)) {
      throw new IllegalArgumentException(
          "the share of seedlings off type must be 0 or more and below 1, e.g. 0.1, got "
              + offType);
    }
    double most = mostSharedSpread(firstTake, secondTake);
    if (!(sharedSpread >= 0 && sharedSpread <= most)) {
      throw new IllegalArgumentException(
          "the spread shared must be 0 to %.2f about takes of %s and %s (half of what single grafts vary by; more was never tried), got %s"
              .formatted(most, firstTake, secondTake, sharedSpread));
    }
  }

  /**
   * The largest {@link #sharedSpread} reckoned with: its variance is half of that of single grafts.
   * Beyond, hands and days would mostly take all or none, which so few of them don't average out.
   *
   * @param firstTake above 0 and below 1
   * @param secondTake above 0 and below 1
   * @return standard deviation, above 0 and below 0.36
   */
  public static double mostSharedSpread(double firstTake, double secondTake) {
    return Math.sqrt(Math.min(ofGrafts(firstTake), ofGrafts(secondTake)) / 2);
  }

  private static double ofGrafts(double take) {
    return take * (1 - take);
  }

  /**
   * Whether beds about either take can hardly differ to both sides.
   *
   * @return true from 95 % and to 5 %
   */
  public boolean nearAllOrNone() {
    return ofGrafts(firstTake) <= NEAR || ofGrafts(secondTake) <= NEAR;
  }

  private static void requireTake(double take) {
    if (!(take > 0 && take < 1)) {
      throw new IllegalArgumentException(
          "a supposed take must lie between 0 and 1, e.g. 0.7, got " + take);
    }
  }

  /**
   * The usual question.
   *
   * @param firstTake above 0 and below 1
   * @param secondTake above 0 and below 1
   * @return margin 10 points, chance 0.8, as many grafts on either stock, no off types, no spread
   *     shared
   */
  public static TrialQuestion of(double firstTake, double secondTake) {
    return new TrialQuestion(firstTake, secondTake, 0.10, 0.80, 1, 0, 0);
  }

  /**
   * With another margin.
   *
   * @param other above 0 and below 1
   * @return a new question
   */
  public TrialQuestion withMargin(double other) {
    return new TrialQuestion(
        firstTake, secondTake, other, power, secondPerFirst, offType, sharedSpread);
  }

  /**
   * With another chance wanted.
   *
   * @param other above 0.05 and below 1
   * @return a new question
   */
  public TrialQuestion withPower(double other) {
    return new TrialQuestion(
        firstTake, secondTake, margin, other, secondPerFirst, offType, sharedSpread);
  }

  /**
   * With unequal stocks.
   *
   * @param other grafts on the second per graft on the first, above 0
   * @return a new question
   */
  public TrialQuestion withSecondPerFirst(double other) {
    return new TrialQuestion(firstTake, secondTake, margin, power, other, offType, sharedSpread);
  }

  /**
   * With seedlings off type.
   *
   * @param share 0 or more and below 1
   * @return a new question
   */
  public TrialQuestion withOffType(double share) {
    return new TrialQuestion(
        firstTake, secondTake, margin, power, secondPerFirst, share, sharedSpread);
  }

  /**
   * With hands, days and cultivars that differ, and that both stocks share alike.
   *
   * @param sd standard deviation of their true takes, 0 to {@link #mostSharedSpread}
   * @return a new question
   */
  public TrialQuestion withSharedSpread(double sd) {
    return new TrialQuestion(firstTake, secondTake, margin, power, secondPerFirst, offType, sd);
  }

  /** Grafts on the second stock beside so many on the first, where grafts count one by one. */
  double secondGrafts(double first) {
    return Math.ceil(first * secondPerFirst - 1e-9);
  }

  /** Fewest grafts on the first stock so that records of either stock would be judged. */
  int fewestJudged() {
    int fewest = SuggestedModel.LEAST_GRAFTS;
    double first = Math.floor((fewest - 1 + 1e-9) / secondPerFirst) + 1;
    return (int) Math.max(fewest, first);
  }

  /** Variance of one graft's result about the take of its hand, day and cultivar. */
  double varianceWithin(double take) {
    return ofGrafts(take) - sharedSpread * sharedSpread;
  }

  /**
   * Grafts of a trial without a shared spread that tell as much as one of this, 1 or more.
   *
   * @param second take of the second stock's grafts as they come
   * @param ratio grafts on the second stock per graft on the first
   */
  double worth(double second, double ratio) {
    return (ofGrafts(firstTake) + ofGrafts(second) / ratio)
        / (varianceWithin(firstTake) + varianceWithin(second) / ratio);
  }

  /** Take of the second stock's grafts as they come, off types among them. */
  double secondTakeAsMixed() {
    return secondTake + offType * (firstTake - secondTake);
  }

  /** What a trial may show. */
  public enum Claim {
    /** The stocks differ. */
    DIFFERENCE,
    /** They differ by less than the margin. */
    EQUIVALENCE
  }
}
