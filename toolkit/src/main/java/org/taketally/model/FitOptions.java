package org.taketally.model;

import java.util.function.Consumer;

/**
 * How a fit is searched; none of it changes what is estimated.
 *
 * @param tolerance the search ends when one more step would gain less log-likelihood than this;
 *     above 0, at most 0.01
 * @param maxSteps steps allowed, at least 1
 * @param threads most threads used, at least 1; the result doesn't depend on it
 * @param progress told of every step as it is made
 * @param expected whether standard errors come from expected instead of observed information: in
 *     half the time, and a per cent or so off; for looks that need the estimates alone
 */
public record FitOptions(
    double tolerance, int maxSteps, int threads, Consumer<SearchStep> progress, boolean expected) {

  public FitOptions {
    if (!(tolerance > 0 && tolerance <= 0.01)) {
      throw new IllegalArgumentException(
          "tolerance must be above 0 and at most 0.01, got " + tolerance);
    }
    if (maxSteps < 1 || threads < 1) {
      throw new IllegalArgumentException(
          "steps and threads must be 1 or more, got %d and %d".formatted(maxSteps, threads));
    }
  }

  /**
   * Options that suit everyone.
   *
   * @return tolerance 1e-9, up to 200 steps, all processors, silent
   */
  public static FitOptions defaults() {
    return new FitOptions(1e-9, 200, Runtime.getRuntime().availableProcessors(), step -> {}, false);
  }

  /**
   * With another tolerance.
   *
   * @param gain log-likelihood left to gain
   * @return new options
   */
  public FitOptions withTolerance(double gain) {
    return new FitOptions(gain, maxSteps, threads, progress, expected);
  }

  /**
   * With another number of threads.
   *
   * @param count at least 1
   * @return new options
   */
  public FitOptions withThreads(int count) {
    return new FitOptions(tolerance, maxSteps, count, progress, expected);
  }

  /**
   * With a listener.
   *
   * @param listener told of every step
   * @return new options
   */
  public FitOptions withProgress(Consumer<SearchStep> listener) {
    return new FitOptions(tolerance, maxSteps, threads, listener, expected);
  }

  /**
   * With standard errors from expected information.
   *
   * @return new options
   */
  public FitOptions withExpectedInformation() {
    return new FitOptions(tolerance, maxSteps, threads, progress, true);
  }
}
