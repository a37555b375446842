package org.taketally.model;

import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.numeric.Parallel;

/**
 * What a fit loses when one parameter is held at another value and all others are fitted anew:
 * twice the log-likelihood, 0 at the estimate.
 */
public final class LikelihoodLoss {

  private final TakeFit fit;
  private final FitOptions options;
  private final Marginal marginal;

  private LikelihoodLoss(TakeFit fit) {
    this.fit = fit;
    this.options = FitOptions.defaults().withTolerance(1e-8);
    this.marginal =
        ModelFitter.marginal(fit.ready(), fit.model().nodes(), new Parallel(options.threads()));
  }

  /**
   * Of a fit. Not to be used from several threads at once.
   *
   * @param fit any fit
   * @return ready to be asked
   */
  public static LikelihoodLoss of(TakeFit fit) {
    return new LikelihoodLoss(fit);
  }

  /**
   * With a fixed effect held.
   *
   * @param place place in {@link TakeFit#fixed()}
   * @param value logits
   * @return 0 or more
   */
  public double atEffect(int place, double value) {
    return at(fit.point().tau.length + place, value);
  }

  /**
   * With a standard deviation held.
   *
   * @param place place in {@link TakeFit#varying()}
   * @param value logits, 0 or more
   * @return 0 or more
   */
  public double atStandardDeviation(int place, double value) {
    return at(place, value * value);
  }

  /** A parameter of (tau, beta) held. */
  private double at(int parameter, double value) {
    LikelihoodPoint best = fit.point();
    double[] tau = best.tau.clone();
    double[] beta = best.beta.clone();
    boolean[] held = new boolean[tau.length + beta.length];
    held[parameter] = true;
    for (int k = 0; k < tau.length; k++) {
      tau[k] = Math.max(tau[k], Search.FLOOR);
    }
    if (parameter < tau.length) {
      tau[parameter] = value;
    } else {
      beta[parameter - tau.length] = value;
    }
    LikelihoodPoint there = new Search(marginal, options, held).run(tau, beta);
    return Math.max(0, 2 * (best.logLikelihood - there.logLikelihood));
  }
}
