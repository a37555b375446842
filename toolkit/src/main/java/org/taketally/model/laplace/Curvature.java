package org.taketally.model.laplace;

/**
 * Observed information of a marginal log-likelihood, by differences of its gradient: central for
 * variances, one-sided for fixed effects, along which it is nearly quadratic.
 */
public final class Curvature {

  private Curvature() {}

  /**
   * Observed information at a point, for the parameters in {@code free} of (tau, beta).
   *
   * @return symmetric, one row a free parameter
   */
  public static double[][] at(Marginal marginal, LikelihoodPoint point, int[] free) {
    double[][] observed = new double[free.length][free.length];
    for (int j = 0; j < free.length; j++) {
      double width = width(point, free[j]);
      boolean central = free[j] < point.tau.length;
      double[] up = gradient(marginal, point, free[j], width);
      double[] down = central ? gradient(marginal, point, free[j], -width) : point.gradient;
      for (int l = 0; l < free.length; l++) {
        observed[j][l] = (down[free[l]] - up[free[l]]) / (central ? 2 * width : width);
      }
    }
    for (int j = 0; j < free.length; j++) {
      for (int l = 0; l < j; l++) {
        observed[j][l] = (observed[j][l] + observed[l][j]) / 2;
        observed[l][j] = observed[j][l];
      }
    }
    return observed;
  }

  /** A small part of a standard error; variances stay above zero. */
  private static double width(LikelihoodPoint point, int parameter) {
    double error = 1 / Math.sqrt(point.information[parameter][parameter]);
    return parameter < point.tau.length
        ? Math.min(0.003 * error, point.tau[parameter] / 20)
        : 1e-4 * error;
  }

  private static double[] gradient(
      Marginal marginal, LikelihoodPoint point, int parameter, double width) {
    double[] tau = point.tau.clone();
    double[] beta = point.beta.clone();
    if (parameter < tau.length) {
      tau[parameter] += width;
    } else {
      beta[parameter - tau.length] += width;
    }
    LikelihoodPoint near = marginal.at(tau, beta);
    marginal.differentiate(near);
    return near.gradient;
  }
}
