package org.taketally.answers.counts;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How likely a true difference between two lots of grafts is to be found, and how many grafts that
 * needs: the normal approximation that sizes are usually worked out by, both tails counted.
 *
 * <pre>
 *   p1, p2   true takes      n1, n2 = ratio * n1   grafts      p = (n1 p1 + n2 p2) / (n1 + n2)
 *   s0^2 = p (1 - p) (1/n1 + 1/n2)          if there were no difference
 *   s^2  = p1 (1 - p1)/n1 + p2 (1 - p2)/n2  as it is
 *   power = chance that |d| > z s0, d normal about p1 - p2 with s
 * </pre>
 *
 * <p>Grafts are taken as independent: for grafts in batches multiply by the design effect.
 *
 * @param alpha chance of a false difference, above 0 and below 0.5
 * @param isOneSided whether only a difference in the true direction counts
 * @param ratio grafts of the second lot per graft of the first, above 0
 * @see "Fleiss, Levin and Paik (2003), Statistical Methods for Rates and Proportions, chapter 4"
 */
public record DifferencePower(double alpha, boolean isOneSided, double ratio) {

  private static final double MOST_GRAFTS = 1e12;
  private static final double ACCURACY = 1e-10;
  private static final int MOST_STEPS = 1000;

  public DifferencePower {
    Equivalence.requireAlpha(alpha);
    if (!(ratio > 0 && ratio < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("the ratio of grafts must be above 0, got " + ratio);
    }
  }

  /**
   * A difference in either direction counts; both lots of one size.
   *
   * @param alpha chance of a false difference, above 0 and below 0.5, e.g. 0.05
   * @return the design
   */
  public static DifferencePower twoSided(double alpha) {
    return new DifferencePower(alpha, false, 1);
  }

  /**
   * Only a difference in the true direction counts; both lots of one size.
   *
   * @param alpha chance of a false difference, above 0 and below 0.5, e.g. 0.05
   * @return the design
   */
  public static DifferencePower oneSided(double alpha) {
    return new DifferencePower(alpha, true, 1);
  }

  /**
   * The same with unequal lots.
   *
   * @param graftsOfSecondPerFirst above 0
   * @return the design
   */
  public DifferencePower withRatio(double graftsOfSecondPerFirst) {
    return new DifferencePower(alpha, isOneSided, graftsOfSecondPerFirst);
  }

  /**
   * How likely the difference is to be found.
   *
   * @param firstTake true take of the first lot, above 0 and below 1
   * @param secondTake true take of the second lot, above 0 and below 1
   * @param firstGrafts grafts of the first lot, above 0; need not be whole
   * @return chance, 0 to 1
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public double power(double firstTake, double secondTake, double firstGrafts) {
    requireTake(firstTake);
    requireTake(secondTake);
    double n2 = ratio * firstGrafts;
    double p = (firstTake + ratio * secondTake) / (1 + ratio);
    double s0 = Math.sqrt(p * (1 - p) * (1 / firstGrafts + 1 / n2));
    double s =
        Math.sqrt(firstTake * (1 - firstTake) / firstGrafts + secondTake * (1 - secondTake) / n2);
    double d = Math.abs(firstTake - secondTake);
    double needed = Quantiles.upper(isOneSided ? alpha : alpha / 2) * s0;
    double found = Quantiles.below((d - needed) / s);
    return isOneSided ? found : found + Quantiles.below((-d - needed) / s);
  }

  /**
   * Grafts of the first lot that make the difference as likely to be found as wanted.
   *
   * @param firstTake true take of the first lot, above 0 and below 1
   * @param secondTake true take of the second lot, above 0 and below 1, not the same
   * @param power chance wanted, above {@code alpha} and below 1, e.g. 0.8
   * @return grafts, not rounded; round up
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public double grafts(double firstTake, double secondTake, double power) {
    requirePower(power);
    if (firstTake == secondTake) {
      throw new IllegalArgumentException(
          "no number of grafts finds a difference between equal takes (%s)".formatted(firstTake));
    }
    return new BrentSolver(ACCURACY, ACCURACY)
        .solve(MOST_STEPS, n -> power(firstTake, secondTake, n) - power, 1e-3, MOST_GRAFTS);
  }

  /**
   * The second take, above the first, that is just as likely to be found different as wanted.
   *
   * @param firstTake true take of the first lot, above 0 and below 1
   * @param firstGrafts grafts of the first lot, above 0
   * @param power chance wanted, above {@code alpha} and below 1
   * @return a take above the first
   * @throws IllegalArgumentException if an argument is outside its range, or even a take of 1 is
   *     less likely to be found
   */
  public double higherTakeFound(double firstTake, double firstGrafts, double power) {
    requirePower(power);
    double most = Math.nextDown(1.0);
    if (power(firstTake, most, firstGrafts) < power) {
      throw new IllegalArgumentException(
          "%s grafts are too few to find even a take of 1 against %s with chance %s"
              .formatted(firstGrafts, firstTake, power));
    }
    return new BrentSolver(ACCURACY, ACCURACY)
        .solve(MOST_STEPS, take -> power(firstTake, take, firstGrafts) - power, firstTake, most);
  }

  private void requirePower(double power) {
    if (!(power > alpha && power < 1)) {
      throw new IllegalArgumentException(
          "the power wanted must lie between alpha (%s) and 1, e.g. 0.8, got %s"
              .formatted(alpha, power));
    }
  }

  static void requireTake(double take) {
    if (!(take > 0 && take < 1)) {
      throw new IllegalArgumentException(
          "a supposed take must lie between 0 and 1, e.g. 0.7, got " + take);
    }
  }
}
