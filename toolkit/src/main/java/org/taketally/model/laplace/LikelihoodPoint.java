package org.taketally.model.laplace;

/** The log-likelihood at one choice of variances and fixed effects, and what was found there. */
public final class LikelihoodPoint {

  public final double[] tau;
  public final double[] beta;

  /** Of single grafts. NaN where the modes weren't found. */
  public double logLikelihood;

  /** Deviations b of every varying column. */
  public double[][] modes;

  /**
   * Diagonal of C: variance of u given theta and beta. Filled by {@link Marginal#differentiate}.
   */
  public double[][] variances;

  /** In (tau, beta). */
  public double[] gradient;

  /** ExpectedInformation in (tau, beta): expected for tau, Schur complement for beta. */
  public double[][] information;

  public LikelihoodPoint(double[] tau, double[] beta) {
    this.tau = tau;
    this.beta = beta;
  }

  public double[] thetas() {
    double[] thetas = new double[tau.length];
    for (int k = 0; k < tau.length; k++) {
      thetas[k] = Math.sqrt(tau[k]);
    }
    return thetas;
  }
}
