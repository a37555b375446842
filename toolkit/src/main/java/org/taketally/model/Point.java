package org.taketally.model;

/** The log-likelihood at one choice of variances and fixed effects, and what was found there. */
final class Point {

  final double[] tau;
  final double[] beta;

  /** Of single grafts. NaN where the modes weren't found. */
  double logLikelihood;

  /** Deviations b of every varying column. */
  double[][] modes;

  /**
   * Diagonal of C: variance of u given theta and beta. Filled by {@link Marginal#differentiate}.
   */
  double[][] variances;

  /** In (tau, beta). */
  double[] gradient;

  /** Information in (tau, beta): expected for tau, Schur complement for beta. */
  double[][] information;

  Point(double[] tau, double[] beta) {
    this.tau = tau;
    this.beta = beta;
  }

  double[] thetas() {
    double[] thetas = new double[tau.length];
    for (int k = 0; k < tau.length; k++) {
      thetas[k] = Math.sqrt(tau[k]);
    }
    return thetas;
  }
}
