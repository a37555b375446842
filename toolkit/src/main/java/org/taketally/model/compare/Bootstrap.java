package org.taketally.model.compare;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.model.Refit;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.terms.Logit;

/**
 * Parametric bootstrap: takes are simulated from a fit, new deviations included, and fitted again.
 * The same seed gives the same result whatever the number of threads. An interrupted thread stops
 * it with a {@link CancellationException}.
 *
 * @param replicates simulated records, at least 1
 * @param seed any number
 * @param progress told how many replicates are done; may be called from several threads
 * @param sequential when a comparison may stop before all replicates are done
 */
public record Bootstrap(int replicates, long seed, IntConsumer progress, Sequential sequential) {

  public Bootstrap {
    if (replicates < 1) {
      throw new IllegalArgumentException("replicates must be 1 or more, got " + replicates);
    }
    Objects.requireNonNull(progress, "progress");
    Objects.requireNonNull(sequential, "sequential");
  }

  /**
   * When a comparison has seen enough. It is looked at after every {@value #LOOK} replicates, in
   * their order, so that the result doesn't depend on threads.
   *
   * @param enough stops when so many replicates gained at least as much as observed (Besag and
   *     Clifford 1991, Biometrika 78, 301-304); 0: never
   * @param limit stops when the p-value is clear of this by {@value #CLEAR} Monte Carlo standard
   *     errors; NaN: never
   */
  public record Sequential(int enough, double limit) {

    /** Replicates between looks. */
    public static final int LOOK = 50;

    /** Standard errors that count as clear. */
    public static final double CLEAR = 4;

    boolean stops(int simulated, int atLeast) {
      double p = (atLeast + 1.0) / (simulated + 1.0);
      return (enough > 0 && atLeast >= enough)
          || Math.abs(p - limit) > CLEAR * Math.sqrt(p * (1 - p) / simulated);
    }
  }

  /**
   * One simulated fit.
   *
   * @param beta fixed effects
   * @param sds standard deviations
   */
  public record Replicate(double[] beta, double[] sds) {

    @Override
    public boolean equals(Object other) {
      return other instanceof Replicate that
          && Arrays.equals(beta, that.beta)
          && Arrays.equals(sds, that.sds);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(beta);
    }

    @Override
    public String toString() {
      return Arrays.toString(beta) + Arrays.toString(sds);
    }
  }

  /**
   * A likelihood-ratio comparison judged by simulation.
   *
   * @param chiSquare observed, twice the gain in log-likelihood
   * @param simulated replicates that could be fitted
   * @param atLeast replicates with at least the observed gain
   * @param pValue (atLeast + 1) / (simulated + 1)
   */
  public record Comparison(double chiSquare, int simulated, int atLeast, double pValue) {

    /**
     * Monte Carlo standard error of the p-value.
     *
     * @return above 0
     */
    public double standardError() {
      return Math.sqrt(pValue * (1 - pValue) / simulated + 0.25 / ((double) simulated * simulated));
    }

    /**
     * Whether another seed could put the p-value on the other side of a limit.
     *
     * @param limit e.g. 0.05
     * @return true if the p-value is clear of it by {@value Sequential#CLEAR} standard errors
     */
    public boolean settles(double limit) {
      return Math.abs(pValue - limit) > Sequential.CLEAR * standardError();
    }
  }

  /**
   * The usual number of replicates, silent.
   *
   * @param seed any number
   * @return 999 replicates
   */
  public static Bootstrap of(long seed) {
    return new Bootstrap(999, seed, done -> {}, new Sequential(0, Double.NaN));
  }

  /**
   * With another number of replicates.
   *
   * @param count at least 1
   * @return a new bootstrap
   */
  public Bootstrap withReplicates(int count) {
    return new Bootstrap(count, seed, progress, sequential);
  }

  /**
   * Stops a comparison that is clear of significance: as soon as so many replicates gained as much
   * as was observed.
   *
   * @param count e.g. 20, at least 1
   * @return a new bootstrap
   */
  public Bootstrap withStopAfter(int count) {
    return new Bootstrap(replicates, seed, progress, new Sequential(count, sequential.limit()));
  }

  /**
   * Stops a comparison whose p-value is clear of a limit, and goes on while it isn't, so that no
   * verdict turns with the seed before {@link #replicates} are done.
   *
   * @param limit e.g. 0.05
   * @return a new bootstrap
   */
  public Bootstrap withStopOnceClearOf(double limit) {
    return new Bootstrap(replicates, seed, progress, new Sequential(sequential.enough(), limit));
  }

  /**
   * With a listener.
   *
   * @param listener told how many replicates are done
   * @return a new bootstrap
   */
  public Bootstrap withProgress(IntConsumer listener) {
    return new Bootstrap(replicates, seed, listener, sequential);
  }

  /**
   * Simulates from a fit and fits again.
   *
   * @param fit any fit
   * @return estimates of the replicates that could be fitted, in a fixed order
   */
  public List<Replicate> of(TakeFit fit) {
    Refit refit = Refit.of(fit);
    return run(
        0,
        replicates,
        number ->
            refit
                .fit(simulate(fit, number))
                .map(found -> new Replicate(found.beta(), found.sds()))
                .orElse(null));
  }

  /**
   * Judges a likelihood-ratio comparison by simulating from the smaller fit.
   *
   * @param smaller the fit with fewer columns
   * @param larger the fit with more, to the same cells
   * @return the comparison
   */
  public Comparison compare(TakeFit smaller, TakeFit larger) {
    double observed = LikelihoodRatioTest.of(smaller, larger).chiSquare();
    Refit small = Refit.of(smaller);
    Refit large = Refit.of(larger);
    int simulated = 0;
    int atLeast = 0;
    for (int from = 0; from < replicates; from += Sequential.LOOK) {
      List<Double> gains =
          run(
              from,
              Math.min(replicates, from + Sequential.LOOK),
              number -> {
                int[] takes = simulate(smaller, number);
                return small
                    .fit(takes)
                    .flatMap(below -> large.fit(takes).map(above -> gain(below, above)))
                    .orElse(null);
              });
      simulated += gains.size();
      atLeast += (int) gains.stream().filter(gain -> gain >= observed - 1e-6).count();
      if (simulated > 0 && sequential.stops(simulated, atLeast)) {
        break;
      }
    }
    return new Comparison(observed, simulated, atLeast, (atLeast + 1.0) / (simulated + 1.0));
  }

  private static double gain(Refit.Estimates below, Refit.Estimates above) {
    return 2 * Math.max(0, above.logLikelihood() - below.logLikelihood());
  }

  private <T> List<T> run(int from, int to, IntFunction<T> replicate) {
    AtomicInteger done = new AtomicInteger(from);
    AtomicBoolean stop = new AtomicBoolean();
    Thread caller = Thread.currentThread();
    List<T> results =
        IntStream.range(from, to)
            .parallel()
            .mapToObj(
                number -> {
                  if (stop.get() || caller.isInterrupted()) {
                    stop.set(true);
                    return null;
                  }
                  T result = replicate.apply(number);
                  progress.accept(done.incrementAndGet());
                  return result;
                })
            .filter(Objects::nonNull)
            .toList();
    if (stop.get()) {
      throw new CancellationException(
          "the bootstrap was stopped after %,d of %,d replicates"
              .formatted(done.get(), replicates));
    }
    return results;
  }

  /** Takes of every cell, drawn from the fit with new deviations. */
  private int[] simulate(TakeFit fit, int number) {
    SplittableRandom random = new SplittableRandom(seed * 1_000_003L + number);
    List<VaryingFactor> varying = fit.varying();
    double[][] deviations = new double[varying.size()][];
    for (int k = 0; k < deviations.length; k++) {
      VaryingFactor factor = varying.get(k);
      deviations[k] = new double[factor.levels().size()];
      for (int j = 0; j < deviations[k].length; j++) {
        deviations[k][j] =
            factor.isExempt(j) ? 0 : factor.standardDeviation() * random.nextGaussian();
      }
    }
    double[] eta = fit.design().linearPredictor(fit.beta(), deviations);
    Cells cells = fit.cells();
    int[] takes = new int[eta.length];
    for (int i = 0; i < takes.length; i++) {
      double take = Logit.take(eta[i]);
      for (int graft = 0; graft < cells.grafts(i); graft++) {
        takes[i] += random.nextDouble() < take ? 1 : 0;
      }
    }
    return takes;
  }
}
