package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.numeric.Parallel;

/**
 * A search that starts again from other sides, because the log-likelihood can have several hills:
 * cultivars against pairings, say, when most cultivars stand on one rootstock. The highest end is
 * kept.
 *
 * <p>A variance that ends at zero is raised, and put in the place of each that doesn't. With few
 * cells, where hills lie further apart and a search takes less than a millisecond, there are starts
 * from all sides, and from what the model holds: the same with one variance kept at zero.
 */
final class RestartedSearch {

  /** Standard deviation of 0.5 logits to begin with: what cultivars and hands usually show. */
  static final double USUAL_TAU = 0.25;

  /** Up to so many cells there are starts from all sides. */
  static final int FEW_CELLS = 100;

  /** Above so many cells there is one other start, with all variances at zero raised. */
  private static final int MANY_CELLS = 20_000;

  /** Up to so many varying columns all their subsets are starts. */
  private static final int FEW_COLUMNS = 4;

  /** Less isn't another hill but another path up the same one. */
  private static final double HIGHER = 1e-8;

  private static final int ROUNDS = 4;

  /** Variances of the starts: usual; levels that differ much; levels that stand for themselves. */
  private static final double[] SCALES = {USUAL_TAU, 4, 36};

  /** Starts at each scale that are climbed from, of all looked at. */
  private static final int CLIMBED = 2;

  /** Where a variance starts that a fit nearby has at zero. */
  private static final double RAISED = 0.01;

  private final Marginal marginal;
  private final FitOptions options;
  private final boolean[] held;
  private Climb best;
  private LikelihoodPoint point;
  private boolean few;

  /** A search that has ended. */
  private record Climb(LikelihoodPoint end, boolean converged, List<SearchStep> log) {
    static Climb of(Search search, double[] tau, double[] beta) {
      LikelihoodPoint end = search.run(tau, beta);
      return new Climb(end, search.converged(), search.log());
    }
  }

  RestartedSearch(Marginal marginal, FitOptions options, boolean[] held) {
    this.marginal = marginal;
    this.options = options;
    this.held = held;
  }

  /** The log of the search that ended highest. */
  List<SearchStep> log() {
    return best.log();
  }

  boolean converged() {
    return best.converged();
  }

  /**
   * Climbs from the usual start, then from others.
   *
   * @param cells how many there are
   */
  LikelihoodPoint run(double[] beta, int cells) {
    double[] tau = new double[held.length - beta.length];
    Arrays.fill(tau, USUAL_TAU);
    keep(climb(tau, beta));
    few = cells <= FEW_CELLS && tau.length > 0;
    if (few) {
      allSides().forEach(start -> improves(start.tau, start.beta));
    }
    climbFromOtherSides(cells);
    return point;
  }

  /**
   * Climbs from where a fit ended that was nearly of the same records or model, and from other
   * starts only if a variance has come down to zero that wasn't there.
   */
  LikelihoodPoint runNear(double[] tau, double[] beta, int cells) {
    double[] start = tau.clone();
    for (int k = 0; k < start.length; k++) {
      start[k] = Math.max(start[k], RAISED);
    }
    keep(climb(start, beta));
    if (IntStream.range(0, tau.length).anyMatch(k -> isZero(point.tau[k]) && !isZero(tau[k]))) {
      climbFromOtherSides(cells);
    }
    return point;
  }

  private void climbFromOtherSides(int cells) {
    boolean higher = cells <= MANY_CELLS || (anyZero() && improves(raised(), point.beta.clone()));
    for (int round = 0; round < ROUNDS && higher; round++) {
      higher = few ? improvesOneByOne() : improvesAtOnce(otherSides());
      for (int k = 0; k < point.tau.length && few; k++) {
        higher |= !isZero(point.tau[k]) && improvesFromBelow(k);
      }
    }
  }

  private boolean improvesOneByOne() {
    boolean higher = false;
    for (double[] start : otherSides()) {
      higher |= improves(start, point.beta.clone());
    }
    return higher;
  }

  /** All starts from the same end, each by itself, so that what is found depends on no thread. */
  private boolean improvesAtOnce(List<double[]> starts) {
    FitOptions untold = options.withProgress(step -> {});
    Climb[] climbs = new Climb[starts.size()];
    new Parallel(options.threads())
        .run(
            climbs.length,
            i -> {
              Search search = new Search(marginal.another(), untold, held).notAgainTo(point);
              climbs[i] = Climb.of(search, starts.get(i), point.beta.clone());
            });
    boolean higher = false;
    for (Climb climb : climbs) {
      climb.log().forEach(options.progress());
      higher |= keptIfHigher(climb);
    }
    return higher;
  }

  private Climb climb(double[] tau, double[] beta) {
    return Climb.of(new Search(marginal, options, held), tau, beta);
  }

  private boolean improves(double[] tau, double[] beta) {
    return keptIfHigher(
        few
            ? climb(tau, beta)
            : Climb.of(new Search(marginal, options, held).notAgainTo(point), tau, beta));
  }

  private boolean keptIfHigher(Climb climb) {
    boolean higher =
        climb.end().logLikelihood
            > point.logLikelihood + HIGHER * (1 + 1e-3 * Math.abs(point.logLikelihood));
    if (higher) {
      keep(climb);
    }
    return higher;
  }

  private void keep(Climb climb) {
    best = climb;
    point = climb.end();
  }

  /** From the best end with one variance kept at zero. */
  private boolean improvesFromBelow(int k) {
    boolean[] kept = held.clone();
    kept[k] = true;
    double[] tau = point.tau.clone();
    tau[k] = Search.FLOOR;
    LikelihoodPoint end = new Search(marginal, options, kept).run(tau, point.beta.clone());
    return improves(end.tau.clone(), end.beta.clone());
  }

  /** Of starts from all sides, the most promising at each scale. */
  private List<LikelihoodPoint> allSides() {
    List<LikelihoodPoint> starts = new ArrayList<>();
    for (double scale : SCALES) {
      subsets()
          .mapToObj(subset -> start(subset, scale))
          .filter(start -> !Double.isNaN(start.logLikelihood))
          .sorted(Comparator.comparingDouble(start -> -start.logLikelihood))
          .limit(CLIMBED)
          .forEach(starts::add);
    }
    return starts;
  }

  /** Subsets of the varying columns as bits; of many columns those of one, all, and all but one. */
  private IntStream subsets() {
    int columns = point.tau.length;
    return IntStream.range(1, 1 << columns)
        .filter(
            subset -> {
              int wide = Integer.bitCount(subset);
              return columns <= FEW_COLUMNS || wide == 1 || wide >= columns - 1;
            });
  }

  private LikelihoodPoint start(int subset, double scale) {
    double[] tau = new double[point.tau.length];
    for (int k = 0; k < tau.length; k++) {
      tau[k] = (subset >> k & 1) == 1 ? scale : Search.FLOOR;
    }
    return marginal.at(tau, marginal.likelyEffects(tau, point.beta));
  }

  private boolean anyZero() {
    return IntStream.range(0, point.tau.length).anyMatch(k -> !held[k] && isZero(point.tau[k]));
  }

  private double[] raised() {
    double[] tau = point.tau.clone();
    for (int k = 0; k < tau.length; k++) {
      tau[k] = !held[k] && isZero(tau[k]) ? USUAL_TAU : tau[k];
    }
    return tau;
  }

  /** Each variance at zero raised to the usual, and in the place of each that isn't. */
  private List<double[]> otherSides() {
    List<double[]> starts = new ArrayList<>();
    int[] free = IntStream.range(0, point.tau.length).filter(k -> !held[k]).toArray();
    for (int zero : free) {
      if (isZero(point.tau[zero])) {
        double[] raised = point.tau.clone();
        raised[zero] = USUAL_TAU;
        starts.add(raised);
        for (int other : free) {
          if (!isZero(point.tau[other])) {
            double[] exchanged = point.tau.clone();
            exchanged[zero] = Math.min(4, point.tau[other]);
            exchanged[other] = Search.FLOOR;
            starts.add(exchanged);
          }
        }
      }
    }
    return starts;
  }

  static boolean isZero(double tau) {
    return tau <= 2 * Search.FLOOR;
  }
}
