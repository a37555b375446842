package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.taketally.answers.survival.HazardRegression.Coefficient;
import org.taketally.answers.survival.HazardRegression.Exposure;

/**
 * The search behind {@link HazardRegression}: Fisher scoring, steps halved until the likelihood
 * rises.
 *
 * <pre>
 *   theta   levels of the periods used, then coefficients      t = exp(eta)
 *   slope of log L in eta       d t / (e^t - 1) - (n - d) t
 *   expected curvature          n t^2 / (e^t - 1)
 *   observed curvature          (n - d) t - d (t / (e^t - 1) - t^2 e^t / (e^t - 1)^2)
 * </pre>
 */
public final class HazardRegressionCalculator {

  private static final int MOST_STEPS = 200;
  private static final double CLOSE_ENOUGH = 1e-12;

  /** A log hazard ratio this far out has run away: one side has no losses, or nothing else. */
  private static final double RUN_AWAY = 25;

  /** Pivots below this, on a unit diagonal, mean that columns say the same. */
  private static final double SAME = 1e-9;

  private static final double SYMMETRIC = 1e-8;

  private final List<String> names;
  private final List<Integer> periods;
  private final List<Exposure> used;
  private double[] theta;

  private HazardRegressionCalculator(List<Exposure> exposures, List<String> names) {
    this.names = List.copyOf(names);
    TreeMap<Integer, long[]> totals = new TreeMap<>();
    for (Exposure exposure : exposures) {
      if (exposure.values().length != names.size()) {
        throw new IllegalArgumentException(
            "expected %d values (%s), got %d"
                .formatted(names.size(), names, exposure.values().length));
      }
      long[] total = totals.computeIfAbsent(exposure.period(), p -> new long[2]);
      total[0] += exposure.atRisk();
      total[1] += exposure.lost();
    }
    if (totals.values().stream().allMatch(total -> total[1] == 0)) {
      throw new IllegalArgumentException("no graft was lost, so there is no hazard to compare");
    }
    totals.values().removeIf(total -> total[1] == 0 || total[1] == total[0]);
    periods = List.copyOf(totals.keySet());
    used =
        exposures.stream().filter(e -> e.atRisk() > 0 && totals.containsKey(e.period())).toList();
    theta = new double[periods.size() + names.size()];
    for (int p = 0; p < periods.size(); p++) {
      long[] total = totals.get(periods.get(p));
      theta[p] = Math.log(-Math.log1p(-(double) total[1] / total[0]));
    }
  }

  /**
   * Fits the hazards.
   *
   * @param exposures at least one loss among them
   * @param names one per value; may be empty for the periods alone
   * @return the log hazard ratios
   * @throws IllegalArgumentException if there are no losses, or values and names differ in number
   * @throws ArithmeticException if a ratio can't be told: columns that say the same, or one side
   *     without losses
   */
  public static HazardRegression of(List<Exposure> exposures, List<String> names) {
    return new HazardRegressionCalculator(exposures, names).run();
  }

  private HazardRegression run() {
    double logLikelihood = logLikelihood(theta);
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] change = new Curvature(false).solve(gradient());
      double[] next = moved(change, 1);
      for (double part = 0.5; !(logLikelihood(next) >= logLikelihood) && part > SAME; part /= 2) {
        next = moved(change, part);
      }
      double largest = largestChange(theta, next);
      theta = next;
      logLikelihood = logLikelihood(theta);
      requireFinite();
      if (largest < CLOSE_ENOUGH) {
        return answer(logLikelihood);
      }
    }
    throw new ArithmeticException("the hazards did not settle in %d steps".formatted(MOST_STEPS));
  }

  private static double largestChange(double[] from, double[] to) {
    double largest = 0;
    for (int j = 0; j < to.length; j++) {
      largest = Math.max(largest, Math.abs(to[j] - from[j]) / Math.max(1, Math.abs(to[j])));
    }
    return largest;
  }

  private void requireFinite() {
    for (int j = 0; j < names.size(); j++) {
      if (!(Math.abs(theta[periods.size() + j]) < RUN_AWAY)) {
        throw new ArithmeticException(
            "no hazard ratio for %s: on one side of it no graft was lost, or all were"
                .formatted(names.get(j)));
      }
    }
  }

  private HazardRegression answer(double logLikelihood) {
    double[] errors = new Curvature(true).standardErrors();
    List<Coefficient> coefficients = new ArrayList<>();
    for (int j = 0; j < names.size(); j++) {
      int place = periods.size() + j;
      coefficients.add(new Coefficient(names.get(j), theta[place], errors[place]));
    }
    return new HazardRegression(coefficients, logLikelihood);
  }

  private double[] row(Exposure exposure) {
    double[] row = new double[theta.length];
    row[periods.indexOf(exposure.period())] = 1;
    System.arraycopy(exposure.values(), 0, row, periods.size(), names.size());
    return row;
  }

  private double t(Exposure exposure, double[] at) {
    double eta = 0;
    double[] row = row(exposure);
    for (int j = 0; j < row.length; j++) {
      eta += row[j] * at[j];
    }
    return Math.exp(eta);
  }

  private double logLikelihood(double[] at) {
    double sum = 0;
    for (Exposure exposure : used) {
      double t = t(exposure, at);
      double logHazard = exposure.lost() == 0 ? 0 : Math.log(-Math.expm1(-t));
      sum += exposure.lost() * logHazard - (exposure.atRisk() - exposure.lost()) * t;
    }
    return sum;
  }

  private double[] gradient() {
    double[] gradient = new double[theta.length];
    for (Exposure exposure : used) {
      double t = t(exposure, theta);
      double slope =
          exposure.lost() * t / Math.expm1(t) - (exposure.atRisk() - exposure.lost()) * t;
      double[] row = row(exposure);
      for (int j = 0; j < row.length; j++) {
        gradient[j] += slope * row[j];
      }
    }
    return gradient;
  }

  private double[] moved(double[] change, double part) {
    double[] next = Arrays.copyOf(theta, theta.length);
    for (int j = 0; j < next.length; j++) {
      next[j] += part * change[j];
    }
    return next;
  }

  /** Information matrix at theta, scaled to a unit diagonal and decomposed. */
  private final class Curvature {
    private final double[] scale = new double[theta.length];
    private final DecompositionSolver solver;

    Curvature(boolean observed) {
      double[][] sum = new double[theta.length][theta.length];
      for (Exposure exposure : used) {
        double weight = weight(exposure, observed);
        double[] row = row(exposure);
        for (int i = 0; i < row.length; i++) {
          for (int j = 0; j < row.length; j++) {
            sum[i][j] += weight * row[i] * row[j];
          }
        }
      }
      for (int j = 0; j < scale.length; j++) {
        scale[j] = Math.sqrt(sum[j][j]);
      }
      for (int i = 0; i < scale.length; i++) {
        for (int j = 0; j < scale.length; j++) {
          sum[i][j] /= scale[i] * scale[j];
        }
      }
      solver = decompose(sum);
    }

    private double weight(Exposure exposure, boolean observed) {
      double t = t(exposure, theta);
      double odds = Math.expm1(t);
      return observed
          ? (exposure.atRisk() - exposure.lost()) * t
              - exposure.lost() * (t / odds - t / odds * t * (1 + 1 / odds))
          : exposure.atRisk() * t * t / odds;
    }

    private DecompositionSolver decompose(double[][] scaled) {
      try {
        return new CholeskyDecomposition(new Array2DRowRealMatrix(scaled, false), SYMMETRIC, SAME)
            .getSolver();
      } catch (NonPositiveDefiniteMatrixException e) {
        throw new ArithmeticException(
            "no hazard ratios: some of %s say the same about these grafts".formatted(names));
      }
    }

    double[] solve(double[] right) {
      double[] scaled = new double[right.length];
      for (int j = 0; j < right.length; j++) {
        scaled[j] = right[j] / scale[j];
      }
      double[] solution = solver.solve(new ArrayRealVector(scaled, false)).toArray();
      for (int j = 0; j < right.length; j++) {
        solution[j] /= scale[j];
      }
      return solution;
    }

    double[] standardErrors() {
      RealMatrix inverse = solver.getInverse();
      double[] errors = new double[scale.length];
      for (int j = 0; j < errors.length; j++) {
        errors[j] = Math.sqrt(inverse.getEntry(j, j)) / scale[j];
      }
      return errors;
    }
  }
}
