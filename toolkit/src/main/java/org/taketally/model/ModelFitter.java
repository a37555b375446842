package org.taketally.model;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.model.CannotFit.Reason;
import org.taketally.model.FitWarning.Kind;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.Curvature;
import org.taketally.model.laplace.FixedOnly;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.laplace.Quadrature;
import org.taketally.model.numeric.Parallel;
import org.taketally.model.numeric.SmallMatrix;

/** Prepares, searches, settles variances at zero, polishes. */
final class ModelFitter {

  /** A fixed effect this uncertain over the range of its column runs to infinity. */
  private static final double RUNAWAY = 30;

  /** How the names of a curve's columns go on after that of the number. */
  private static final String CURVE = ": curve ";

  /** A spread this large means levels that all took or all failed. */
  private static final double WIDEST = 900;

  /**
   * Cells times parameters above which expected information stands for observed: there they agree
   * to three digits and more (docs/performance.md), and the differences would double the time.
   */
  private static final long EXACT_CURVATURE = 3_000_000;

  private final FitInput ready;
  private final ModelData evidence;
  private final FitOptions options;
  private final Marginal marginal;

  private ModelFitter(FitInput ready, FitOptions options, int nodes) {
    this.ready = ready;
    this.evidence = ready.evidence();
    this.options = options;
    boolean single = evidence.varying() == 1 && evidence.exempt()[0] == ModelData.NONE;
    if (nodes > 1 && !single) {
      throw new CannotFit(
          Reason.NODES,
          List.copyOf(ready.levels().keySet()),
          "quadrature nodes need exactly one varying column, this model has %d; leave nodes out (Laplace), or vary by one column"
              .formatted(evidence.varying()));
    }
    this.marginal = marginal(ready, nodes, new Parallel(options.threads()));
  }

  static TakeFit fit(ModelTerms model, Cells cells, FitOptions options) {
    return prepared(model, cells, options).run();
  }

  /** Starts where a fit ended that was nearly of the same records or model. */
  static TakeFit fitNear(TakeFit known, ModelTerms model, Cells cells, FitOptions options) {
    ModelFitter fitter = prepared(model, cells, options);
    double[] beta = fitter.effectsOf(known);
    return fitter.evidence.cells() <= RestartedSearch.FEW_CELLS
        ? fitter.run()
        : fitter.run(search -> search.runNear(fitter.tauOf(known), beta, fitter.evidence.cells()));
  }

  private static ModelFitter prepared(ModelTerms model, Cells cells, FitOptions options) {
    FitInput ready = FitInput.of(model, cells);
    Identifiability.check(ready.design(), ready.evidence());
    return new ModelFitter(ready, options, model.nodes());
  }

  /** Fixed effects of another fit by name, 0 where it lacks one. */
  private double[] effectsOf(TakeFit known) {
    List<String> names = known.design().names();
    double[] theirs = known.beta();
    return ready.design().names().stream()
        .mapToInt(names::indexOf)
        .mapToDouble(place -> place < 0 ? 0 : theirs[place])
        .toArray();
  }

  /** Variances of another fit by name, the usual where it lacks one. */
  private double[] tauOf(TakeFit known) {
    return ready.levels().keySet().stream()
        .mapToDouble(
            column ->
                known.varying().stream()
                    .filter(factor -> factor.factor().equals(column))
                    .mapToDouble(f -> f.standardDeviation() * f.standardDeviation())
                    .findFirst()
                    .orElse(RestartedSearch.USUAL_TAU))
        .toArray();
  }

  static Marginal marginal(FitInput ready, int nodes, Parallel parallel) {
    return nodes > 1
        ? new Quadrature(ready.evidence(), nodes)
        : new BlockLaplace(ready.evidence(), ready.sorted(), parallel);
  }

  private TakeFit run() {
    return run(search -> search.run(FixedOnly.fit(evidence), evidence.cells()));
  }

  private TakeFit run(Function<RestartedSearch, LikelihoodPoint> climb) {
    int parameters = evidence.varying() + evidence.fixed();
    RestartedSearch search = new RestartedSearch(marginal, options, new boolean[parameters]);
    LikelihoodPoint point = climb.apply(search);
    refuseRunaways(point);
    point = settle(point);
    int[] free = free(point);
    double[][] observed;
    if (!options.expected() && (long) evidence.cells() * parameters <= EXACT_CURVATURE) {
      observed = Curvature.at(marginal, point, free);
      point = polish(point, free, observed);
    } else {
      observed = SmallMatrix.part(point.information, free);
    }
    warn(point, search);
    return new TakeFit(
        ready,
        point,
        new ObservedInformation(free, observed),
        search.log(),
        new Parallel(options.threads()));
  }

  /** Variances at the floor become exactly zero. */
  private LikelihoodPoint settle(LikelihoodPoint found) {
    double[] tau = found.tau.clone();
    boolean[] fixed = new boolean[found.gradient.length];
    boolean any = false;
    for (int k = 0; k < tau.length; k++) {
      if (RestartedSearch.isZero(tau[k])) {
        tau[k] = 0;
        fixed[k] = true;
        any = true;
      }
    }
    return any ? new Search(marginal, options, fixed).run(tau, found.beta) : found;
  }

  private static int[] free(LikelihoodPoint point) {
    return IntStream.range(0, point.gradient.length)
        .filter(j -> j >= point.tau.length || point.tau[j] > 0)
        .toArray();
  }

  /** One Newton step with the observed information, kept if it doesn't lose. */
  private LikelihoodPoint polish(LikelihoodPoint point, int[] free, double[][] observed) {
    SmallMatrix factor = SmallMatrix.of(observed);
    LikelihoodPoint best = point;
    if (factor != null) {
      double[] slope = new double[free.length];
      for (int j = 0; j < free.length; j++) {
        slope[j] = point.gradient[free[j]];
      }
      double[] step = factor.solve(slope);
      double[] tau = point.tau.clone();
      double[] beta = point.beta.clone();
      for (int j = 0; j < free.length; j++) {
        if (free[j] < tau.length) {
          tau[free[j]] = Math.max(tau[free[j]] / 2, tau[free[j]] + step[j]);
        } else {
          beta[free[j] - tau.length] += step[j];
        }
      }
      LikelihoodPoint next = marginal.at(tau, beta);
      if (next.logLikelihood >= point.logLikelihood - 1e-9 * Math.abs(point.logLikelihood)) {
        best = next;
      }
    }
    if (best == point) {
      best = marginal.at(point.tau, point.beta);
    }
    marginal.differentiate(best);
    return best;
  }

  private void refuseRunaways(LikelihoodPoint point) {
    int varying = point.tau.length;
    for (int k = 0; k < varying; k++) {
      if (!(point.tau[k] < WIDEST)) {
        String column = List.copyOf(ready.levels().keySet()).get(k);
        throw new CannotFit(
            Reason.SEPARATED,
            List.of(column),
            "of each level of %s either every graft took or every one failed, so how far levels differ can't be estimated; add records in which some took and some failed; where you name the model yourself, leave %s out of it"
                .formatted(column, column));
      }
    }
    double[] range = ranges();
    int[] betas = IntStream.range(varying, varying + range.length).toArray();
    SmallMatrix factor = SmallMatrix.of(SmallMatrix.part(point.information, betas));
    double[][] covariance = factor == null ? null : factor.inverse();
    int furthest = -1;
    for (int j = 1; j < range.length; j++) {
      boolean runs = covariance == null || !(error(covariance, range, j) < RUNAWAY);
      if (runs && (furthest < 0 || reach(point, range, j) > reach(point, range, furthest))) {
        furthest = j;
      }
    }
    if (furthest > 0) {
      String name = ready.design().names().get(furthest);
      throw new CannotFit(
          Reason.SEPARATED,
          List.of(name),
          "%s, together with the other columns, splits takes from failures perfectly, so its effect has no finite estimate; leave a column out, or let one vary"
              .formatted(name));
    }
  }

  /**
   * Standard error of what a column moves over its range; of a curve's columns that of the whole
   * curve, as they may hang together closely where the curve itself is well known.
   */
  private double error(double[][] covariance, double[] range, int j) {
    List<String> names = ready.design().names();
    int curve = names.get(j).indexOf(CURVE);
    if (curve < 0) {
      return range[j] * Math.sqrt(covariance[j][j]);
    }
    String start = names.get(j).substring(0, curve + CURVE.length());
    int[] all =
        IntStream.range(0, range.length).filter(i -> names.get(i).startsWith(start)).toArray();
    double most = 0;
    for (double[] row : evidence.patterns().rows()) {
      double variance = 0;
      for (int a : all) {
        for (int b : all) {
          variance += row[a] * row[b] * covariance[a][b];
        }
      }
      most = Math.max(most, variance);
    }
    return Math.sqrt(most);
  }

  private static double reach(LikelihoodPoint point, double[] range, int j) {
    return Math.abs(point.beta[j]) * range[j];
  }

  private double[] ranges() {
    double[][] rows = evidence.patterns().rows();
    double[] range = new double[evidence.fixed()];
    for (int j = 0; j < range.length; j++) {
      int column = j;
      double high = Arrays.stream(rows).mapToDouble(row -> row[column]).max().orElse(0);
      double low = Arrays.stream(rows).mapToDouble(row -> row[column]).min().orElse(0);
      range[j] = high - low;
    }
    return range;
  }

  private void warn(LikelihoodPoint point, RestartedSearch search) {
    List<String> columns = List.copyOf(ready.levels().keySet());
    for (int k = 0; k < point.tau.length; k++) {
      if (point.tau[k] == 0) {
        ready
            .warnings()
            .add(
                new FitWarning(
                    Kind.SPREAD_AT_ZERO,
                    columns.get(k),
                    "the spread between levels of %s is estimated as zero: they differ no more than chance would make them; see docs/when-a-fit-warns.md"
                        .formatted(columns.get(k))));
      }
    }
    if (!search.converged()) {
      ready
          .warnings()
          .add(
              new FitWarning(
                  Kind.NOT_CONVERGED,
                  "",
                  "the search stopped before it was sure of the best fit (%d steps); don't use this fit for decisions: leave out a column, or allow more steps"
                      .formatted(search.log().size() - 1)));
    }
  }
}
