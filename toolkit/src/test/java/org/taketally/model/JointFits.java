package org.taketally.model;

import org.taketally.cells.Cells;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.JointMode;
import org.taketally.model.laplace.SortedCells;
import org.taketally.model.numeric.Parallel;
import org.taketally.model.numeric.Vectors;

/**
 * Older ways to fit a model with one varying column, from the engine's joint modes of fixed effects
 * and deviations. Taketally does not offer them; published answers that used them check the modes
 * and their covariance.
 */
public final class JointFits {

  private JointFits() {}

  /**
   * A fit.
   *
   * @param beta fixed effects
   * @param errors their standard errors; empty where none are published
   * @param sd standard deviation of the varying column
   * @param logLikelihood of counts by Laplace at these values
   */
  public record JointFit(double[] beta, double[] errors, double sd, double logLikelihood) {
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  private static BlockLaplace engine(TakeFit fit) {
    return new BlockLaplace(fit.evidence(), new SortedCells(fit.evidence()), new Parallel(1));
  }

  /**
   * lme4's nAGQ = 0: fixed effects at the joint mode, the standard deviation where the Laplace
   * likelihood there is largest.
   *
   * @param model one varying column
   * @param cells the counts
   * @param low variance below the best
   * @param high variance above it
   * @return the fit
   */
  public static JointFit jointModesOnly(TakeModel model, Cells cells, double low, double high) {
    TakeFit fit = model.fit(cells);
    BlockLaplace engine = engine(fit);
    double from = low;
    double to = high;
    for (int i = 0; i < 60; i++) {
      double a = from + (to - from) / 3;
      double b = to - (to - from) / 3;
      if (atJointMode(engine, fit, a) < atJointMode(engine, fit, b)) {
        from = a;
      } else {
        to = b;
      }
    }
    return new JointFit(
        engine.joint(new double[] {from}, fit.beta()).beta(),
        new double[0],
        Math.sqrt(from),
        atJointMode(engine, fit, from) + fit.cells().logCoefficients());
  }

  private static double atJointMode(BlockLaplace engine, TakeFit fit, double tau) {
    double[] beta = engine.joint(new double[] {tau}, fit.beta()).beta();
    return engine.at(new double[] {tau}, beta).logLikelihood;
  }

  /**
   * Penalised quasi-likelihood of Breslow and Clayton (1993): the step of the variance is b'b / (q
   * - tr(K) / sigma^2) with q deviations b of covariance K.
   *
   * @param model one varying column
   * @param cells the counts
   * @return the fit
   */
  public static JointFit penalisedQuasiLikelihood(TakeModel model, Cells cells) {
    TakeFit fit = model.fit(cells);
    BlockLaplace engine = engine(fit);
    double tau = 0.1;
    JointMode mode = engine.joint(new double[] {tau}, fit.beta()).correct(false);
    for (int iteration = 0; iteration < 300; iteration++) {
      double explained = 0;
      for (double sd : mode.sd.chain[0]) {
        explained += sd * sd / tau;
      }
      double[] b = mode.mode.chain[0];
      tau = Vectors.dot(b, b) / (b.length - explained);
      mode = engine.joint(new double[] {tau}, fit.beta()).correct(false);
    }
    return new JointFit(
        mode.beta(),
        mode.sd.rest,
        Math.sqrt(tau),
        engine.at(new double[] {tau}, mode.beta()).logLikelihood);
  }
}
