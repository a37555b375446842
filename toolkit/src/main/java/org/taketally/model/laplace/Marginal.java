package org.taketally.model.laplace;

/**
 * A marginal log-likelihood over variances and fixed effects. Keeps its last modes to start from.
 */
public interface Marginal {

  /** Value only. */
  LikelihoodPoint at(double[] tau, double[] beta);

  /** One for another thread, of the same records, that has found no modes yet. */
  Marginal another();

  /** Fixed effects to start from at other variances, from those at hand. */
  default double[] likelyEffects(double[] tau, double[] beta) {
    return beta.clone();
  }

  /** Adds gradient, information and variances to the point evaluated last. */
  void differentiate(LikelihoodPoint point);
}
