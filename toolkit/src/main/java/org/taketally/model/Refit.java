package org.taketally.model;

import java.util.Arrays;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.laplace.Quadrature;
import org.taketally.model.laplace.SortedCells;
import org.taketally.model.numeric.Parallel;

/** Fits other takes of the same cells, as quickly as possible: no curvature, no warnings. */
final class Refit {

  private static final FitOptions QUICK = FitOptions.withDefaults().tolerance(1e-6).threads(1);

  private final TakeFit fit;
  private final SortedCells sorted;

  Refit(TakeFit fit) {
    this.fit = fit;
    this.sorted = fit.ready().sorted();
  }

  /** Null where the takes can't be fitted (separation, all took). Safe from several threads. */
  LikelihoodPoint fit(int[] takes) {
    long took = Arrays.stream(takes).asLongStream().sum();
    if (took == 0 || took == fit.cells().graftsTotal()) {
      return null;
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
    return search.converged() && !runaway ? point : null;
  }
}
