package org.taketally.terms;

/**
 * The scale on which effects add up: log odds of take.
 *
 * <pre>
 *   logit(p) = log(p / (1 - p)),   take(x) = 1 / (1 + exp(-x))
 * </pre>
 */
public final class Logit {

  private Logit() {}

  /**
   * From a take.
   *
   * @param take 0 to 1
   * @return logits; infinite at 0 and 1
   */
  public static double of(double take) {
    return Math.log(take / (1 - take));
  }

  /**
   * To a take.
   *
   * @param logit any number
   * @return 0 to 1
   */
  public static double take(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }

  /**
   * Takes expected of some grafts.
   *
   * @param grafts 0 or more
   * @param logit of each
   * @return 0 to {@code grafts}
   */
  public static double takes(double grafts, double logit) {
    return grafts / (1 + Math.exp(-logit));
  }

  /**
   * To a take, the last digit the same on every machine: for invented records.
   *
   * @param logit any number
   * @return 0 to 1
   */
  public static double takeAlikeEverywhere(double logit) {
    return 1 / (1 + StrictMath.exp(-logit));
  }

  /**
   * Minus the log probability that a graft fails, log(1 + exp(x)), without overflow.
   *
   * @param logit of its take
   * @return 0 or more
   */
  public static double minusLogFailure(double logit) {
    return Math.max(0, logit) + Math.log1p(Math.exp(-Math.abs(logit)));
  }
}
