package org.taketally.model;

import java.util.function.DoubleUnaryOperator;
import org.taketally.model.numeric.GaussHermite;
import org.taketally.terms.Logit;

/** Averages over a normal distribution by five Gauss-Hermite nodes. */
public final class NormalAverage {

  private static final GaussHermite FIVE = GaussHermite.of(5);

  private NormalAverage() {}

  /**
   * Mean of a function of a normal number.
   *
   * @param mean its mean
   * @param variance its variance, 0 or more
   * @param function exact for polynomials up to degree 9
   * @return the mean of the function
   */
  public static double of(double mean, double variance, DoubleUnaryOperator function) {
    return FIVE.average(mean, Math.sqrt(variance), function);
  }

  /**
   * Mean take for a normal logit.
   *
   * @param mean of the logit
   * @param variance of the logit, 0 or more
   * @return 0 to 1
   */
  public static double take(double mean, double variance) {
    return of(mean, variance, Logit::take);
  }
}
