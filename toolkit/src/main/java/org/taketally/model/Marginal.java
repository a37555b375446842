package org.taketally.model;

/**
 * A marginal log-likelihood over variances and fixed effects. Keeps its last modes to start from.
 */
interface Marginal {

  /** Value only. */
  Point at(double[] tau, double[] beta);

  /** Fixed effects to start from at other variances, from those at hand. */
  default double[] likelyEffects(double[] tau, double[] beta) {
    return beta.clone();
  }

  /** Adds gradient, information and variances to the point evaluated last. */
  void differentiate(Point point);
}
