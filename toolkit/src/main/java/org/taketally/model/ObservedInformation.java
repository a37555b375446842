package org.taketally.model;

import org.taketally.model.numeric.SmallMatrix;

/**
 * Observed information of the free parameters.
 *
 * @param free places in (tau, beta)
 * @param matrix one row a free parameter
 */
record ObservedInformation(int[] free, double[][] matrix) {

  /** Covariance of beta, allowing for the uncertainty of tau. */
  double[][] betaCovariance(int varying, int fixed, double[][] fallback) {
    SmallMatrix factor = SmallMatrix.of(matrix);
    if (factor == null) {
      return SmallMatrix.of(fallback).inverse();
    }
    double[][] inverse = factor.inverse();
    int skip = free.length - fixed;
    double[][] covariance = new double[fixed][fixed];
    for (int i = 0; i < fixed; i++) {
      System.arraycopy(inverse[skip + i], skip, covariance[i], 0, fixed);
    }
    return covariance;
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }
}
