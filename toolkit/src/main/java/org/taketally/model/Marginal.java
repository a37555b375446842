package org.taketally.model;

/**
 * A marginal log-likelihood over variances and fixed effects. Keeps its last modes to start from.
 */
interface Marginal {

  /** Value only. */
  Point at(double[] tau, double[] beta);

  /** Adds gradient, information and variances to the point evaluated last. */
  void differentiate(Point point);
}
