package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.cells.Cells;
import org.taketally.model.laplace.BlockLaplace;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.numeric.Parallel;
import org.taketally.model.numeric.SmallMatrix;
import org.taketally.terms.Interval;
import org.taketally.terms.Logit;

/** A fitted model of takes. Immutable: arrays it gives are copies. */
public final class TakeFit {

  private static final double LEVEL = 0.95;
  private static final int PREDICTION_DRAWS = 2_000;

  private final FitInput ready;
  private final LikelihoodPoint point;
  private final Parallel parallel;
  private final double[][] betaCovariance;
  private final List<SearchStep> search;
  private final double[] linearPredictor;
  private final double[] varianceErrors;
  private List<FitWarning> warnings;
  private final List<VaryingFactor> varying;
  private Prior lastPrior;
  private PosteriorSampler lastSampler;

  TakeFit(
      FitInput ready,
      LikelihoodPoint point,
      ObservedInformation observed,
      List<SearchStep> search,
      Parallel parallel) {
    this.parallel = parallel;
    this.ready = ready;
    this.point = point;
    this.search = List.copyOf(search);
    int spreads = point.tau.length;
    int[] betas = java.util.stream.IntStream.range(spreads, spreads + point.beta.length).toArray();
    this.betaCovariance =
        observed.betaCovariance(
            spreads, point.beta.length, SmallMatrix.part(point.information, betas));
    this.linearPredictor = ready.design().linearPredictor(point.beta, point.modes);
    this.varianceErrors = observed.varianceErrors(spreads);
    List<VaryingFactor> factors = new ArrayList<>();
    for (String column : ready.levels().keySet()) {
      factors.add(factor(column, factors.size()));
    }
    this.varying = List.copyOf(factors);
  }

  /**
   * What was fitted.
   *
   * @return its columns and how each enters; {@link TakeModel#of} makes a model of them again
   */
  public ModelTerms model() {
    return ready.model();
  }

  /**
   * The cells used: those complete in the columns the model needs, the pairing added if it varies.
   *
   * @return the cells, in the order of {@link #linearPredictor}
   */
  public Cells cells() {
    return ready.cells();
  }

  /**
   * Grafts not used, by the column that wasn't recorded; a graft lacking two counts under both.
   *
   * @return column to grafts; empty if all were used
   */
  public Map<String, Long> leftOut() {
    return ready.leftOut();
  }

  /**
   * Log-likelihood of single grafts: doesn't depend on how rows were grouped.
   *
   * @return at most 0
   */
  public double logLikelihood() {
    return point.logLikelihood;
  }

  /**
   * Log-likelihood with the binomial coefficients of the rows as given, as grouped-data programs
   * print it.
   *
   * @return at most 0
   */
  public double logLikelihoodOfCounts() {
    return point.logLikelihood + cells().logCoefficients();
  }

  /**
   * Parameters estimated: fixed effects and standard deviations.
   *
   * @return at least 1
   */
  public int parameters() {
    return point.beta.length + point.tau.length;
  }

  /**
   * Fixed effects with 95 % Wald intervals.
   *
   * @return intercept first
   */
  public List<FixedEffect> fixed() {
    return fixed(LEVEL);
  }

  /**
   * Fixed effects with Wald intervals.
   *
   * @param coverage coverage, strictly between 0 and 1
   * @return intercept first
   */
  public List<FixedEffect> fixed(double coverage) {
    double reach = NormalDistribution.of(0, 1).inverseCumulativeProbability((1 + coverage) / 2);
    List<FixedEffect> effects = new ArrayList<>();
    effects.add(effect(FixedEffect.INTERCEPT, "", 0, new Interval(-reach, reach, coverage)));
    for (FixedBlock block : ready.design().blocks()) {
      for (String label : block.labels()) {
        effects.add(
            effect(block.term(), label, effects.size(), new Interval(-reach, reach, coverage)));
      }
    }
    return effects;
  }

  private FixedEffect effect(String term, String label, int j, Interval reach) {
    double estimate = point.beta[j];
    double error = Math.sqrt(betaCovariance[j][j]);
    return new FixedEffect(
        term,
        label,
        estimate,
        error,
        new Interval(
            estimate + reach.low() * error, estimate + reach.high() * error, reach.coverage()));
  }

  /**
   * Fixed effects.
   *
   * @return in the order of {@link #fixed()}, logits
   */
  public double[] beta() {
    return point.beta.clone();
  }

  /**
   * Covariance of the fixed effects, from the curvature of the marginal log-likelihood.
   *
   * @return a copy, square, in the order of {@link #fixed()}
   */
  public double[][] betaCovariance() {
    return Arrays.stream(betaCovariance).map(double[]::clone).toArray(double[][]::new);
  }

  /**
   * Varying columns.
   *
   * @return in the model's order
   */
  public List<VaryingFactor> varying() {
    return varying;
  }

  /**
   * One varying column.
   *
   * @param column its name
   * @return spread, and the deviation of each level
   * @throws IllegalArgumentException if it doesn't vary in this fit
   */
  public VaryingFactor varying(String column) {
    return varying.stream()
        .filter(factor -> factor.factor().equals(column))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "%s doesn't vary in this fit; it varies by %s"
                        .formatted(column, ready.levels().keySet())));
  }

  private VaryingFactor factor(String column, int k) {
    int[] codes = ready.design().varying().get(column);
    int size = ready.levels().get(column).size();
    double theta = Math.sqrt(point.tau[k]);
    double[] conditional = new double[size];
    for (int j = 0; j < size; j++) {
      boolean exempt = evidence().exempt()[k] == j;
      conditional[j] = exempt ? 0 : theta * Math.sqrt(Math.max(0, point.variances[k][j]));
    }
    long[] grafts = new long[size];
    long[] takes = new long[size];
    for (int i = 0; i < codes.length; i++) {
      grafts[codes[i]] += cells().grafts(i);
      takes[codes[i]] += cells().takes(i);
    }
    return new VaryingFactor(
        column, ready.levels().get(column), theta, point.modes[k], conditional, grafts, takes);
  }

  /**
   * The compared column within groups and across them, if the model asks for it.
   *
   * @return empty without {@link TakeModel#compareWithin}, or if fewer than two levels were used
   */
  public Optional<WithinComparison> within() {
    return model()
        .compared()
        .filter(column -> !model().within().isEmpty() && design().adjustsFor(column))
        .map(
            column ->
                new WithinReader(design(), point.beta, betaCovariance)
                    .read(column, ready.unusedWithin()));
  }

  /**
   * What a reader must know.
   *
   * @return may be empty
   */
  public synchronized List<FitWarning> warnings() {
    if (warnings == null) {
      List<FitWarning> all = new ArrayList<>(ready.warnings());
      if (model().nodes() == 1) {
        all.addAll(ThinLevels.warnings(ready, point, varianceErrors, varianceShifts()));
      }
      warnings = List.copyOf(all);
    }
    return warnings;
  }

  /** How far each variance would move, were its levels integrated over, not approximated. */
  double[] varianceShifts() {
    return ThinLevels.shifts(ready.evidence(), point, linearPredictor, varianceErrors);
  }

  /**
   * The search, step by step.
   *
   * @return at least one step
   */
  public List<SearchStep> search() {
    return search;
  }

  /**
   * Logit of take of each cell, at the modes.
   *
   * @return a copy, one a cell
   */
  public double[] linearPredictor() {
    return linearPredictor.clone();
  }

  /**
   * Chance of take of each cell, at the modes.
   *
   * @return one a cell, 0 to 1
   */
  public double[] fittedTake() {
    double[] take = new double[linearPredictor.length];
    for (int i = 0; i < take.length; i++) {
      take[i] = Logit.take(linearPredictor[i]);
    }
    return take;
  }

  /**
   * How cells enter the model.
   *
   * @return fixed columns and level codes
   */
  public TakeDesign design() {
    return ready.design();
  }

  /**
   * Draws from the posterior with the usual prior: standard deviations half-normal with scale 1
   * logit, fixed effects by {@link Prior.Fixed#JEFFREYS}.
   *
   * @param count number of draws, at least 1
   * @param seed the same seed gives the same draws
   * @return the draws
   */
  public TakeDraws draws(int count, long seed) {
    return draws(count, seed, Prior.usual());
  }

  /**
   * Draws from the posterior: fixed effects, standard deviations and deviations, by nested Laplace
   * (Rue, Martino and Chopin 2009). Where the fit {@link #isLarge} effects are drawn with the
   * standard deviations at their estimates, and these by the curvature of the fit.
   *
   * @param count number of draws, at least 1
   * @param seed the same seed gives the same draws
   * @param prior of each standard deviation and of fixed effects
   * @return the draws
   * @see <a href="https://doi.org/10.1111/j.1467-9868.2008.00700.x">Rue et al. (2009)</a>
   */
  public TakeDraws draws(int count, long seed, Prior prior) {
    if (count < 1) {
      throw new IllegalArgumentException("draws must be 1 or more, got " + count);
    }
    return new TakeDraws(design(), varying, count, sampler(prior).source(count, seed));
  }

  /**
   * Draws with the standard deviations at their estimates, which cost a hundredth and are a little
   * too close together: for a second look at what {@link #draws} already showed.
   *
   * @param count number of draws, at least 1
   * @param seed the same seed gives the same draws
   * @return the draws, with the usual prior
   */
  public TakeDraws drawsAtEstimates(int count, long seed) {
    return new TakeDraws(design(), varying, count, sampler(Prior.usual()).aroundFit(seed));
  }

  /**
   * The last one is kept with its points, since most draws of a fit are under one prior; a large
   * fit has none.
   */
  private synchronized PosteriorSampler sampler(Prior prior) {
    if (lastSampler == null || isLarge() || !prior.equals(lastPrior)) {
      lastSampler = new PosteriorSampler(engine(), point, prior, cells().size());
      lastPrior = prior;
    }
    return lastSampler;
  }

  /**
   * Degrees of freedom that the groups of a column leave for effects that change between them only:
   * groups less the fixed effects, intercept included, of which less than 5 % changes within
   * groups.
   *
   * @param groups a varying column, e.g. {@code grafting_day} or {@code block}
   * @return at least 1
   * @throws IllegalArgumentException if the column doesn't vary in this fit
   */
  public int groupDegrees(String groups) {
    return GroupDegrees.of(design(), cells().grafts(), groups);
  }

  /**
   * The groups between which, but not within which, an adjusted column changes. Groups that are
   * made of the column, such as pairings, don't count.
   *
   * @param column a column the fit adjusts for or compares
   * @return of several varying columns the one that leaves the fewest degrees; empty if the column
   *     changes within all of them
   */
  public Optional<BetweenGroups> changesBetween(String column) {
    List<String> groups =
        varying.stream()
            .map(VaryingFactor::factor)
            .filter(name -> !name.equals(ModelTerms.PAIRING))
            .filter(name -> !model().together().containsKey(name))
            .toList();
    return GroupDegrees.between(design(), cells().grafts(), column, groups);
  }

  /**
   * What a lot not yet made is likely to do.
   *
   * @param lot what is known of it
   * @return its take and counts, from 2,000 draws with a fixed seed
   * @throws IllegalArgumentException if the lot names a column the fit doesn't know, or a level new
   *     to a column that doesn't vary
   */
  public LotPrediction predict(PlannedLot lot) {
    return predict(lot, draws(PREDICTION_DRAWS, 1));
  }

  /**
   * What a lot not yet made is likely to do, by draws at hand: lots that share a new level (the
   * same new day) share its luck in every draw.
   *
   * @param lot what is known of it
   * @param draws of this fit
   * @return its take and counts
   */
  public LotPrediction predict(PlannedLot lot, TakeDraws draws) {
    return new LotPredictor(ready, varying, draws, lot).predict();
  }

  /**
   * Whether fitting again would take minutes, so that answers rest on this fit alone.
   *
   * @return true above 100,000 cells; and above 5,000 where more than 1,000 levels have to be
   *     solved for together, such as pairings beside as many grafting days
   */
  public boolean isLarge() {
    return PosteriorSampler.isLarge(cells().size(), ready.sorted().rest);
  }

  BlockLaplace engine() {
    return new BlockLaplace(ready.evidence(), ready.sorted(), parallel).startAt(point.modes);
  }

  ModelData evidence() {
    return ready.evidence();
  }

  FitInput ready() {
    return ready;
  }

  LikelihoodPoint point() {
    return point;
  }
}
