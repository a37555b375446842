package org.taketally.model;

import java.util.Arrays;
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

  /**
   * Standard errors of variances.
   *
   * @return one a varying column; NaN where it is zero, or hardly known
   */
  double[] varianceErrors(int varying) {
    double[] errors = new double[varying];
    Arrays.fill(errors, Double.NaN);
    SmallMatrix factor = SmallMatrix.of(matrix);
    if (factor != null) {
      double[][] inverse = factor.inverse();
      for (int j = 0; j < free.length && free[j] < varying; j++) {
        errors[free[j]] = Math.sqrt(inverse[j][j]);
      }
    }
    return errors;
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
