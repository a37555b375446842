package org.taketally.model.laplace;

import org.taketally.model.numeric.SmallMatrix;
import org.taketally.model.numeric.Vectors;
import org.taketally.terms.Logit;

/** Logistic regression on patterns: the start of every search. */
public final class FixedOnly {

  private FixedOnly() {}

  /** Maximum likelihood without varying columns, to about 8 digits; stops early if it runs away. */
  public static double[] fit(ModelData evidence) {
    Patterns patterns = evidence.patterns();
    double[] n = patterns.sums(evidence.grafts());
    double[] y = patterns.sums(evidence.takes());
    int width = patterns.width();
    double[] beta = new double[width];
    for (int iteration = 0; iteration < 25; iteration++) {
      double[] eta = patterns.times(beta);
      double[] slope = new double[width];
      double[][] information = new double[width][width];
      for (int r = 0; r < eta.length; r++) {
        double mu = Logit.take(eta[r]);
        add(patterns.rows()[r], y[r] - n[r] * mu, n[r] * mu * (1 - mu), slope, information);
      }
      SmallMatrix factor = SmallMatrix.of(information);
      if (factor == null) {
        break;
      }
      double[] step = factor.solve(slope);
      beta = Vectors.plus(beta, 1, step);
      if (Vectors.dot(step, slope) < 1e-10) {
        break;
      }
    }
    return beta;
  }

  private static void add(
      double[] x, double residual, double weight, double[] slope, double[][] information) {
    for (int i = 0; i < x.length; i++) {
      if (x[i] != 0) {
        slope[i] += x[i] * residual;
        for (int j = 0; j < x.length; j++) {
          information[i][j] += weight * x[i] * x[j];
        }
      }
    }
  }
}
