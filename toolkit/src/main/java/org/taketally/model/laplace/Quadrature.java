package org.taketally.model.laplace;

import java.util.Arrays;
import org.taketally.model.numeric.GaussHermite;
import org.taketally.terms.Logit;

/**
 * Marginal likelihood by adaptive Gauss-Hermite quadrature, one varying column: nodes are centred
 * at each level's mode and scaled by its curvature (Pinheiro and Chao 2006). The gradient follows
 * the nodes, so it is exactly that of the value.
 */
public final class Quadrature implements Marginal {

  private final ModelData evidence;
  private final GaussHermite rule;
  private final int[][] cellsOf;
  private final double[] modes;
  private double[] fixedPart;
  private double theta;

  public Quadrature(ModelData evidence, int nodes) {
    this.evidence = evidence;
    this.rule = GaussHermite.of(nodes);
    this.cellsOf = evidence.cellsByLevel(0);
    this.modes = new double[cellsOf.length];
  }

  private Quadrature(Quadrature same) {
    this.evidence = same.evidence;
    this.rule = same.rule;
    this.cellsOf = same.cellsOf;
    this.modes = new double[cellsOf.length];
  }

  @Override
  public Quadrature another() {
    return new Quadrature(this);
  }

  @Override
  public LikelihoodPoint at(double[] tau, double[] beta) {
    LikelihoodPoint point = new LikelihoodPoint(tau, beta);
    theta = point.thetas()[0];
    double[] perPattern = evidence.patterns().times(beta);
    fixedPart = new double[evidence.cells()];
    for (int i = 0; i < fixedPart.length; i++) {
      fixedPart[i] = perPattern[evidence.patterns().codes()[i]];
    }
    point.modes = new double[1][modes.length];
    for (int j = 0; j < modes.length; j++) {
      Level level = new Level(j);
      point.logLikelihood += level.logIntegral();
      point.modes[0][j] = theta * modes[j];
    }
    return point;
  }

  @Override
  public void differentiate(LikelihoodPoint point) {
    int fixed = point.beta.length;
    point.gradient = new double[1 + fixed];
    point.information = new double[1 + fixed][1 + fixed];
    point.variances = new double[1][modes.length];
    for (int j = 0; j < modes.length; j++) {
      Level level = new Level(j);
      level.logIntegral();
      level.addGradient(point.gradient);
      level.addInformation(point.information);
      point.variances[0][j] = 1 / level.curvature;
    }
  }

  private double residual(int i, double eta) {
    return evidence.takes()[i] - Logit.takes(evidence.grafts()[i], eta);
  }

  private double weight(int i, double eta) {
    double mu = Logit.take(eta);
    return evidence.grafts()[i] * mu * (1 - mu);
  }

  private double weightSlope(int i, double eta) {
    double mu = Logit.take(eta);
    return weight(i, eta) * (1 - 2 * mu);
  }

  /** One level of the column, at its mode. */
  private final class Level {
    private final int[] cells;
    private double mode;
    private double curvature;
    private double[] share;

    Level(int number) {
      cells = cellsOf[number];
      mode = theta > 0 ? modes[number] : 0;
      for (int iteration = 0; iteration < 100; iteration++) {
        curvature = curvature(mode);
        double step = slope(mode) / curvature;
        while (!(value(mode + step) >= value(mode) - 1e-10)) {
          step /= 2;
        }
        mode += step;
        if (Math.abs(step) < 1e-12) {
          break;
        }
      }
      curvature = curvature(mode);
      modes[number] = mode;
    }

    private double value(double u) {
      double sum = -u * u / 2;
      for (int i : cells) {
        double eta = fixedPart[i] + theta * u;
        sum += evidence.takes()[i] * eta - evidence.grafts()[i] * Logit.minusLogFailure(eta);
      }
      return sum;
    }

    private double slope(double u) {
      double sum = -u;
      for (int i : cells) {
        sum += theta * residual(i, fixedPart[i] + theta * u);
      }
      return sum;
    }

    private double curvature(double u) {
      double sum = 1;
      for (int i : cells) {
        sum += theta * theta * weight(i, fixedPart[i] + theta * u);
      }
      return sum;
    }

    double logIntegral() {
      double spread = 1 / Math.sqrt(curvature);
      share = new double[rule.nodes().length];
      for (int m = 0; m < share.length; m++) {
        share[m] = rule.logWeights()[m] + value(mode + spread * rule.nodes()[m]);
      }
      double highest = Arrays.stream(share).max().orElse(0);
      double total = 0;
      for (int m = 0; m < share.length; m++) {
        share[m] = Math.exp(share[m] - highest);
        total += share[m];
      }
      for (int m = 0; m < share.length; m++) {
        share[m] /= total;
      }
      return Math.log(spread) + highest + Math.log(total);
    }

    void addGradient(double[] gradient) {
      double spread = 1 / Math.sqrt(curvature);
      double drift = 0;
      double stretch = 0;
      double explicit = 0;
      for (int m = 0; m < share.length; m++) {
        double u = mode + spread * rule.nodes()[m];
        double slope = slope(u);
        drift += share[m] * slope;
        stretch += share[m] * slope * rule.nodes()[m];
        explicit += theta > 0 ? share[m] * u * (slope + u) / theta : 0;
      }
      double onCurvature = -(1 + spread * stretch) / (2 * curvature);
      double weights = (curvature - 1) / Math.max(theta * theta, Double.MIN_NORMAL);
      double slopes = 0;
      double residuals = 0;
      for (int i : cells) {
        double eta = fixedPart[i] + theta * mode;
        slopes += weightSlope(i, eta);
        residuals += residual(i, eta);
      }
      double onMode = drift + onCurvature * theta * theta * theta * slopes;
      if (theta > 0) {
        double total =
            explicit
                + onMode * (residuals - theta * mode * weights) / curvature
                + onCurvature * (2 * theta * weights + theta * theta * mode * slopes);
        gradient[0] += total / (2 * theta);
      }
      for (int i : cells) {
        double eta = fixedPart[i] + theta * mode;
        double coefficient =
            -onMode * theta * weight(i, eta) / curvature
                + onCurvature * theta * theta * weightSlope(i, eta);
        for (int m = 0; m < share.length; m++) {
          double u = mode + spread * rule.nodes()[m];
          coefficient += share[m] * residual(i, fixedPart[i] + theta * u);
        }
        double[] x = evidence.patterns().rows()[evidence.patterns().codes()[i]];
        for (int j = 0; j < x.length; j++) {
          gradient[1 + j] += coefficient * x[j];
        }
      }
    }

    void addInformation(double[][] information) {
      double[] sum = new double[evidence.fixed()];
      for (int i : cells) {
        double w = weight(i, fixedPart[i] + theta * mode);
        double[] x = evidence.patterns().rows()[evidence.patterns().codes()[i]];
        for (int j = 0; j < x.length; j++) {
          sum[j] += w * x[j];
          for (int l = 0; l < x.length; l++) {
            information[1 + j][1 + l] += w * x[j] * x[l];
          }
        }
      }
      for (int j = 0; j < sum.length; j++) {
        for (int l = 0; l < sum.length; l++) {
          information[1 + j][1 + l] -= theta * theta * sum[j] * sum[l] / curvature;
        }
      }
      if (theta > 0) {
        double p = (1 - 1 / curvature) / (theta * theta);
        information[0][0] += p * p / 2;
      }
    }
  }
}
