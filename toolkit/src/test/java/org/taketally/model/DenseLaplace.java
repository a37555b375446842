package org.taketally.model;

import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.numeric.SmallMatrix;
import org.taketally.model.numeric.Vectors;

/** Laplace marginal likelihood with one dense matrix over all levels: for a few hundred levels. */
final class DenseLaplace implements Marginal {

  private final ModelData evidence;
  private final int[] from;
  private final int levels;
  private double[] u;
  private double[] theta;
  private double[] eta;
  private SmallMatrix factor;

  DenseLaplace(ModelData evidence) {
    this.evidence = evidence;
    this.from = new int[evidence.varying() + 1];
    for (int k = 0; k < evidence.varying(); k++) {
      from[k + 1] = from[k] + evidence.sizes()[k];
    }
    this.levels = from[evidence.varying()];
    this.u = new double[levels];
  }

  @Override
  public DenseLaplace another() {
    return new DenseLaplace(evidence);
  }

  @Override
  public LikelihoodPoint at(double[] tau, double[] beta) {
    LikelihoodPoint point = new LikelihoodPoint(tau, beta);
    theta = point.thetas();
    double[] perPattern = evidence.patterns().times(beta);
    double best = value(perPattern, u);
    for (int iteration = 0; iteration < 200; iteration++) {
      factor = SmallMatrix.of(hessian());
      double[] slope = slope();
      double[] step = factor.solve(slope);
      double decrement = Vectors.dot(step, slope);
      double scale = 1;
      double[] next = Vectors.plus(u, 1, step);
      double value = value(perPattern, next);
      while (!(value >= best - 1e-9) && scale > 1e-6) {
        scale /= 2;
        next = Vectors.plus(u, scale, step);
        value = value(perPattern, next);
      }
      u = next;
      best = value;
      if (decrement < 1e-20) {
        break;
      }
    }
    factor = SmallMatrix.of(hessian());
    point.logLikelihood = best - factor.logDeterminant() / 2;
    point.modes = new double[evidence.varying()][];
    for (int k = 0; k < evidence.varying(); k++) {
      point.modes[k] = new double[evidence.sizes()[k]];
      for (int j = 0; j < point.modes[k].length; j++) {
        point.modes[k][j] = theta[k] * u[from[k] + j];
      }
    }
    return point;
  }

  private double value(double[] perPattern, double[] deviations) {
    eta = new double[evidence.cells()];
    double sum = -Vectors.dot(deviations, deviations) / 2;
    for (int i = 0; i < eta.length; i++) {
      eta[i] = perPattern[evidence.patterns().codes()[i]];
      for (int k = 0; k < theta.length; k++) {
        eta[i] += scale(k, i) * deviations[from[k] + evidence.codes()[k][i]];
      }
      sum +=
          evidence.takes()[i] * eta[i]
              - evidence.grafts()[i]
                  * (Math.max(eta[i], 0) + Math.log1p(Math.exp(-Math.abs(eta[i]))));
    }
    return sum;
  }

  /** 0 where the cell's level has no deviation. */
  private double scale(int k, int i) {
    return evidence.codes()[k][i] == evidence.exempt()[k] ? 0 : theta[k];
  }

  private double residual(int i) {
    return evidence.takes()[i] - evidence.grafts()[i] / (1 + Math.exp(-eta[i]));
  }

  private double weight(int i) {
    double mu = 1 / (1 + Math.exp(-eta[i]));
    return evidence.grafts()[i] * mu * (1 - mu);
  }

  private double[] slope() {
    double[] slope = new double[levels];
    for (int k = 0; k < theta.length; k++) {
      for (int i = 0; i < eta.length; i++) {
        slope[from[k] + evidence.codes()[k][i]] += scale(k, i) * residual(i);
      }
    }
    return Vectors.plus(slope, -1, u);
  }

  private double[][] hessian() {
    double[][] hessian = new double[levels][levels];
    for (int i = 0; i < eta.length; i++) {
      double w = weight(i);
      for (int k = 0; k < theta.length; k++) {
        for (int l = 0; l < theta.length; l++) {
          hessian[from[k] + evidence.codes()[k][i]][from[l] + evidence.codes()[l][i]] +=
              w * scale(k, i) * scale(l, i);
        }
      }
    }
    for (int j = 0; j < levels; j++) {
      hessian[j][j] += 1;
    }
    return hessian;
  }

  @Override
  public void differentiate(LikelihoodPoint point) {
    int varying = theta.length;
    int fixed = evidence.fixed();
    double[][] c = factor.inverse();
    double[] t = new double[eta.length];
    double[] a = new double[levels];
    double[] rho = new double[levels];
    double[] gradient = new double[varying + fixed];
    double[][] cross = new double[fixed][levels];
    double[][] schur = new double[fixed][fixed];
    for (int i = 0; i < eta.length; i++) {
      double mu = 1 / (1 + Math.exp(-eta[i]));
      double v = 0;
      for (int k = 0; k < varying; k++) {
        for (int l = 0; l < varying; l++) {
          v +=
              scale(k, i)
                  * scale(l, i)
                  * c[from[k] + evidence.codes()[k][i]][from[l] + evidence.codes()[l][i]];
        }
      }
      t[i] = weight(i) * (1 - 2 * mu) * v;
      double[] x = evidence.patterns().rows()[evidence.patterns().codes()[i]];
      for (int k = 0; k < varying; k++) {
        int level = from[k] + evidence.codes()[k][i];
        a[level] += scale(k, i) * t[i];
        rho[level] += scale(k, i) > 0 ? residual(i) : 0;
        for (int j = 0; j < fixed; j++) {
          cross[j][level] += scale(k, i) * weight(i) * x[j];
        }
      }
      for (int j = 0; j < fixed; j++) {
        gradient[varying + j] += x[j] * (residual(i) - t[i] / 2);
        for (int l = 0; l < fixed; l++) {
          schur[j][l] += weight(i) * x[j] * x[l];
        }
      }
    }
    double[] s = factor.solve(a);
    point.information = new double[varying + fixed][varying + fixed];
    for (int j = 0; j < fixed; j++) {
      gradient[varying + j] += Vectors.dot(cross[j], s) / 2;
      double[] solved = factor.solve(cross[j]);
      for (int l = 0; l < fixed; l++) {
        point.information[varying + j][varying + l] = schur[j][l] - Vectors.dot(solved, cross[l]);
      }
    }
    point.variances = new double[varying][];
    for (int k = 0; k < varying; k++) {
      point.variances[k] = new double[evidence.sizes()[k]];
      for (int j = 0; j < point.variances[k].length && theta[k] > 0; j++) {
        int level = from[k] + j;
        point.variances[k][j] = c[level][level];
        gradient[k] +=
            (rho[level] * rho[level]
                    - (1 - c[level][level]) / point.tau[k]
                    - s[level] / theta[k] * rho[level])
                / 2;
        for (int l = 0; l < varying; l++) {
          if (theta[l] == 0) {
            continue;
          }
          for (int m = from[l]; m < from[l + 1]; m++) {
            double p = ((m == level ? 1 : 0) - c[level][m]) / (theta[k] * theta[l]);
            point.information[k][l] += p * p / 2;
          }
        }
      }
    }
    point.gradient = gradient;
  }
}
