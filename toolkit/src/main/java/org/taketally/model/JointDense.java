package org.taketally.model;

import java.util.Random;

/** Gaussian draws of (beta, u) at the modes of a fit, from one dense matrix. */
final class JointDense implements TakeDraws.Source {

  private final Evidence evidence;
  private final Point point;
  private final SmallMatrix factor;
  private final long seed;

  JointDense(Evidence evidence, Point point, double[] eta, long seed) {
    this.evidence = evidence;
    this.point = point;
    this.seed = seed;
    int fixed = evidence.fixed();
    int size = fixed;
    for (int q : evidence.sizes()) {
      size += q;
    }
    double[][] precision = new double[size][size];
    double[] theta = point.thetas();
    for (int j = fixed; j < size; j++) {
      precision[j][j] = 1;
    }
    for (int i = 0; i < evidence.cells(); i++) {
      double[] a = new double[size];
      System.arraycopy(evidence.patterns().rows()[evidence.patterns().codes()[i]], 0, a, 0, fixed);
      int from = fixed;
      for (int k = 0; k < theta.length; k++) {
        a[from + evidence.codes()[k][i]] = theta[k];
        from += evidence.sizes()[k];
      }
      double mu = 1 / (1 + Math.exp(-eta[i]));
      double w = evidence.grafts()[i] * mu * (1 - mu);
      for (int j = 0; j < size; j++) {
        for (int l = 0; l < size && a[j] != 0; l++) {
          precision[j][l] += w * a[j] * a[l];
        }
      }
    }
    factor = SmallMatrix.of(precision);
  }

  @Override
  public TakeDraws.Draw draw(int number) {
    Random random = new Random(seed * 1_000_003 + number);
    double[] theta = point.thetas();
    int size = evidence.fixed();
    for (int q : evidence.sizes()) {
      size += q;
    }
    double[] normal = new double[size];
    for (int j = 0; j < size; j++) {
      normal[j] = random.nextGaussian();
    }
    double[] x = factor.solveTransposed(normal);
    double[] beta = new double[evidence.fixed()];
    for (int j = 0; j < beta.length; j++) {
      beta[j] = point.beta[j] + x[j];
    }
    double[][] effects = new double[theta.length][];
    int from = beta.length;
    for (int k = 0; k < theta.length; k++) {
      effects[k] = new double[evidence.sizes()[k]];
      for (int j = 0; j < effects[k].length; j++) {
        effects[k][j] = point.modes[k][j] + theta[k] * x[from++];
      }
    }
    return new TakeDraws.Draw(beta, theta, effects);
  }
}
