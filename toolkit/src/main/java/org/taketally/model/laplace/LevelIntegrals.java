package org.taketally.model.laplace;

import org.taketally.model.numeric.GaussHermite;
import org.taketally.terms.Logit;

/**
 * Compares Laplace's approximation with quadrature, level by level: each level of a column is
 * integrated over alone, all others standing at their modes. What that leaves out, that levels of
 * crossed columns move together, is small where it matters: for levels of few grafts.
 *
 * <pre>
 *   theta   standard deviation of the column, tau = theta^2     u   deviation of a level / theta
 *   o_i     logit of cell i without the level's deviation
 *   f(u)    sum over cells of the level of y (o + theta u) - n log(1 + exp(o + theta u)), - u^2 / 2
 *   e       log integral of exp(f) by quadrature about its mode, less Laplace's value
 * </pre>
 *
 * @see "Pinheiro and Chao (2006), Journal of Computational and Graphical Statistics 15, 58-81"
 */
public final class LevelIntegrals {

  private static final GaussHermite RULE = GaussHermite.of(15);
  private static final double STEP = 0.02;
  private static final int MOST_STEPS = 50;

  private final ModelData evidence;
  private final double[] eta;
  private final double[][] modes;

  /**
   * At a fit.
   *
   * @param evidence the cells
   * @param eta logit of each cell at the modes
   * @param modes deviations, logits, one array a varying column
   */
  public LevelIntegrals(ModelData evidence, double[] eta, double[][] modes) {
    this.evidence = evidence;
    this.eta = eta;
    this.modes = modes;
  }

  /**
   * What quadrature adds to the slope of the log-likelihood.
   *
   * @param column place of a varying column with a variance above 0
   * @param tau its variance
   * @return sum over levels of de / dtau; above 0 where Laplace puts the variance too low
   */
  public double slope(int column, double tau) {
    double theta = Math.sqrt(tau);
    double apart = 2 * STEP * theta;
    int[][] cells = evidence.cellsByLevel(column);
    double more = excess(column, cells, theta * (1 + STEP));
    double less = excess(column, cells, theta * (1 - STEP));
    return (more - less) / apart / (2 * theta);
  }

  private double excess(int column, int[][] cells, double theta) {
    double sum = 0;
    for (int level = 0; level < cells.length; level++) {
      if (cells[level].length > 0 && level != evidence.exempt()[column]) {
        sum += new Level(cells[level], modes[column][level], theta).excess();
      }
    }
    return sum;
  }

  /** One level alone. */
  private final class Level {

    private final int[] cells;
    private final double deviation;
    private final double theta;

    Level(int[] cells, double deviation, double theta) {
      this.cells = cells;
      this.deviation = deviation;
      this.theta = theta;
    }

    double excess() {
      double u = deviation / theta;
      double step = 1;
      for (int k = 0; k < MOST_STEPS && Math.abs(step) > 1e-10; k++) {
        step = slope(u) / curvature(u);
        u += Math.max(-2, Math.min(2, step));
      }
      double top = value(u);
      double width = 1 / Math.sqrt(curvature(u));
      double sum = 0;
      for (int k = 0; k < RULE.nodes().length; k++) {
        sum += Math.exp(RULE.logWeights()[k] + value(u + width * RULE.nodes()[k]) - top);
      }
      return Math.log(sum);
    }

    private double logit(int cell, double u) {
      return eta[cell] - deviation + theta * u;
    }

    private double value(double u) {
      double sum = -u * u / 2;
      for (int cell : cells) {
        double logit = logit(cell, u);
        sum +=
            evidence.takes()[cell] * logit - evidence.grafts()[cell] * Logit.minusLogFailure(logit);
      }
      return sum;
    }

    private double slope(double u) {
      double sum = -u;
      for (int cell : cells) {
        double take = Logit.take(logit(cell, u));
        sum += theta * (evidence.takes()[cell] - evidence.grafts()[cell] * take);
      }
      return sum;
    }

    private double curvature(double u) {
      double sum = 1;
      for (int cell : cells) {
        double take = Logit.take(logit(cell, u));
        sum += theta * theta * evidence.grafts()[cell] * take * (1 - take);
      }
      return sum;
    }
  }
}
