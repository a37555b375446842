package org.taketally.model;

import java.util.Arrays;
import java.util.Optional;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.laplace.Quadrature;
import org.taketally.model.laplace.SortedCells;
import org.taketally.model.numeric.Parallel;

/** Fits other takes of the same cells, as quickly as possible: no curvature, no warnings. */
public final class Refit {

  private static final FitOptions QUICK = FitOptions.defaults().withTolerance(1e-6).withThreads(1);

  private final TakeFit fit;
  private final SortedCells sorted;

  /**
   * What was found.
   *
   * @param beta fixed effects, in the order of the fit
   * @param sds standard deviations, in the order of the fit
   * @param logLikelihood at most 0
   */
  public record Estimates(double[] beta, double[] sds, double logLikelihood) {

    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return Double.hashCode(logLikelihood);
    }
  }

  private Refit(TakeFit fit) {
    this.fit = fit;
    this.sorted = fit.ready().sorted();
  }

  /**
   * Of the cells of a fit.
   *
   * @param fit any fit: its model, and where the search begins
   * @return ready to fit
   */
  public static Refit of(TakeFit fit) {
    return new Refit(fit);
  }

  /**
   * Fits takes. Safe from several threads.
   *
   * @param takes one a cell of the fit, 0 to its grafts
   * @return empty where they can't be fitted (separation, all took)
   */
  public Optional<Estimates> fit(int[] takes) {
    long took = Arrays.stream(takes).asLongStream().sum();
    if (took == 0 || took == fit.cells().graftsTotal()) {
      return Optional.empty();
    }
    ModelData evidence = fit.evidence().withTakes(takes);
    Marginal marginal =
        fit.model().nodes() > 1
            ? new Quadrature(evidence, fit.model().nodes())
            : new BlockLaplace(evidence, sorted, new Parallel(1));
    double[] tau = fit.point().tau.clone();
    for (int k = 0; k < tau.length; k++) {
      tau[k] = Math.max(tau[k], 0.01);
    }
    Search search = new Search(marginal, QUICK, new boolean[tau.length + fit.beta().length]);
    LikelihoodPoint point = search.run(tau, fit.beta().clone());
    boolean runaway = false;
    for (double b : point.beta) {
      runaway |= !(Math.abs(b) < 1e6);
    }
    return search.converged() && !runaway
        ? Optional.of(new Estimates(point.beta, point.thetas(), point.logLikelihood))
        : Optional.empty();
  }
}
