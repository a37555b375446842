package org.taketally.model;

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
import org.taketally.model.laplace.LikelihoodPoint;

/**
 * Parametric bootstrap: takes are simulated from a fit, new deviations included, and fitted again.
 * The same seed gives the same result whatever the number of threads. An interrupted thread stops
 * it with a {@link CancellationException}.
 *
 * @param replicates simulated records, at least 1
 * @param seed any number
 * @param progress told how many replicates are done; may be called from several threads
 */
public record Bootstrap(int replicates, long seed, IntConsumer progress) {

  public Bootstrap {
    if (replicates < 1) {
      throw new IllegalArgumentException("replicates must be 1 or more, got " + replicates);
    }
    Objects.requireNonNull(progress, "progress");
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
  public record Comparison(double chiSquare, int simulated, int atLeast, double pValue) {}

  /**
   * The usual number of replicates, silent.
   *
   * @param seed any number
   * @return 999 replicates
   */
  public static Bootstrap withSeed(long seed) {
    return new Bootstrap(999, seed, done -> {});
  }

  /**
   * With another number of replicates.
   *
   * @param count at least 1
   * @return a new bootstrap
   */
  public Bootstrap replicates(int count) {
    return new Bootstrap(count, seed, progress);
  }

  /**
   * With a listener.
   *
   * @param listener told how many replicates are done
   * @return a new bootstrap
   */
  public Bootstrap progress(IntConsumer listener) {
    return new Bootstrap(replicates, seed, listener);
  }

  /**
   * Simulates from a fit and fits again.
   *
   * @param fit any fit
   * @return estimates of the replicates that could be fitted, in a fixed order
   */
  public List<Replicate> of(TakeFit fit) {
    Refit refit = new Refit(fit);
    return run(
        number -> {
          LikelihoodPoint point = refit.fit(simulate(fit, number));
          return point == null ? null : new Replicate(point.beta, point.thetas());
        });
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
    Refit small = new Refit(smaller);
    Refit large = new Refit(larger);
    List<Double> gains =
        run(
            number -> {
              int[] takes = simulate(smaller, number);
              LikelihoodPoint below = small.fit(takes);
              LikelihoodPoint above = large.fit(takes);
              return below == null || above == null
                  ? null
                  : 2 * (above.logLikelihood - below.logLikelihood);
            });
    int atLeast = (int) gains.stream().filter(gain -> gain >= observed - 1e-9).count();
    return new Comparison(observed, gains.size(), atLeast, (atLeast + 1.0) / (gains.size() + 1.0));
  }

  private <T> List<T> run(IntFunction<T> replicate) {
    AtomicInteger done = new AtomicInteger();
    AtomicBoolean stop = new AtomicBoolean();
    Thread caller = Thread.currentThread();
    List<T> results =
        IntStream.range(0, replicates)
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
        boolean exempt = fit.evidence().exempt()[k] == j;
        deviations[k][j] = exempt ? 0 : factor.standardDeviation() * random.nextGaussian();
      }
    }
    double[] eta = fit.predictor(fit.beta(), deviations);
    Cells cells = fit.cells();
    int[] takes = new int[eta.length];
    for (int i = 0; i < takes.length; i++) {
      double take = 1 / (1 + Math.exp(-eta[i]));
      for (int graft = 0; graft < cells.grafts()[i]; graft++) {
        takes[i] += random.nextDouble() < take ? 1 : 0;
      }
    }
    return takes;
  }
}
