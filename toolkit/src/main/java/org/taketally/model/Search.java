package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.Marginal;
import org.taketally.model.numeric.BoxedStep;
import org.taketally.model.numeric.CurvatureMemory;
import org.taketally.model.numeric.Vectors;

/**
 * Maximises a marginal log-likelihood over tau (not below 0) and beta.
 *
 * <p>Projected quasi-Newton in (tau, beta): the information at the current point (expected for tau,
 * Schur complement for beta), corrected by the last few changes of the gradient, gives the step
 * that gains most within the bounds. In a balanced design one such step from afar lands on the
 * variances. The search has converged where no step within the bounds gains anything, that is,
 * where the projected gradient is zero.
 */
final class Search {

  /** Below this a variance counts as being at zero: a standard deviation of 1e-4 logits. */
  static final double FLOOR = 1e-8;

  /** Gradient changes over steps that gain more say little about the curvature at the maximum. */
  private static final double NEARBY = 2;

  /** A gain below this share of the log-likelihood moves no estimate by 1e-3 standard errors. */
  private static final double SHARE = 1e-13;

  /** With less to gain than this the log-likelihood is nearly quadratic. */
  private static final double NEAR_THE_TOP = 0.5;

  /** A step from near the top misses it by less than this share of what it gains. */
  private static final double LANDED = 0.1;

  private final Marginal marginal;
  private final FitOptions options;
  private final boolean[] held;
  private final CurvatureMemory memory = new CurvatureMemory();
  private final List<SearchStep> log = new ArrayList<>();
  private LikelihoodPoint point;
  private LikelihoodPoint known;
  private boolean converged;

  /** Parameters marked in {@code held}, (tau, beta), stay where they start. */
  Search(Marginal marginal, FitOptions options, boolean[] held) {
    this.marginal = marginal;
    this.options = options;
    this.held = held.clone();
  }

  List<SearchStep> log() {
    return log;
  }

  boolean converged() {
    return converged;
  }

  /** Gives up where the next step would land at this end, which another search has reached. */
  Search notAgainTo(LikelihoodPoint end) {
    known = end;
    return this;
  }

  LikelihoodPoint run(double[] tau, double[] beta) {
    point = marginal.at(tau, beta);
    if (Double.isNaN(point.logLikelihood)) {
      throw new IllegalStateException("no modes at the start of the search");
    }
    marginal.differentiate(point);
    for (int step = 0; step <= options.maxSteps(); step++) {
      double gain = gainLeft();
      record(step, gain);
      if (gain < Math.max(options.tolerance(), SHARE * Math.abs(point.logLikelihood))) {
        converged = true;
        break;
      }
      if (known != null && gain < NEAR_THE_TOP && landsAtKnown(gain)) {
        break;
      }
      if (step == options.maxSteps() || !advance()) {
        break;
      }
    }
    return point;
  }

  private void record(int step, double gain) {
    SearchStep made =
        new SearchStep(
            step, point.logLikelihood, gain, Arrays.stream(point.thetas()).boxed().toList());
    log.add(made);
    options.progress().accept(made);
  }

  /** What the best step within the bounds promises, by the more hopeful of two curvatures. */
  private double gainLeft() {
    double gain = step(point.information, false).gain();
    return memory.isEmpty()
        ? gain
        : Math.max(gain, step(memory.correct(point.information), false).gain());
  }

  private BoxedStep step(double[][] curvature, boolean cautious) {
    double[] low = new double[point.gradient.length];
    double[] high = new double[low.length];
    for (int j = 0; j < low.length; j++) {
      if (!held[j]) {
        low[j] = j < point.tau.length ? lowest(point.tau[j], cautious) - point.tau[j] : -INFINITE;
        high[j] = j < point.tau.length ? 8 * point.tau[j] + 0.5 : INFINITE;
      }
    }
    return BoxedStep.of(curvature, point.gradient, low, high);
  }

  /** Whether the best step leads nearly to the known end, measured by what it would still cost. */
  private boolean landsAtKnown(double gain) {
    double[] landing = Vectors.plus(join(point), 1, step(point.information, false).step());
    double[] left = Vectors.plus(landing, -1, join(known));
    double cost = 0;
    for (int j = 0; j < left.length; j++) {
      cost += left[j] * Vectors.dot(point.information[j], left) / 2;
    }
    return cost < LANDED * gain;
  }

  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** A variance far from zero goes there by and by. */
  private static double lowest(double tau, boolean cautious) {
    return Math.min(tau, cautious && tau > 0.01 ? tau / 10 : FLOOR);
  }

  private boolean advance() {
    if (!memory.isEmpty() && advance(step(memory.correct(point.information), true).step())) {
      return true;
    }
    memory.clear();
    return advance(step(point.information, true).step());
  }

  /** Moves along the direction, shortened until the log-likelihood rises. */
  private boolean advance(double[] direction) {
    double[] here = join(point);
    double slope = Vectors.dot(direction, point.gradient);
    double noise = 1e-11 * Math.abs(point.logLikelihood) + 1e-10;
    double scale = 1;
    for (int attempt = 0; attempt < 30; attempt++) {
      LikelihoodPoint next = evaluate(Vectors.plus(here, scale, direction));
      if (next.logLikelihood >= point.logLikelihood + 1e-4 * scale * slope - noise) {
        marginal.differentiate(next);
        if (slope < NEARBY) {
          memory.remember(
              Vectors.plus(join(next), -1, here), Vectors.plus(point.gradient, -1, next.gradient));
        }
        point = next;
        return true;
      }
      double lost = point.logLikelihood + scale * slope - next.logLikelihood;
      double best = scale * scale * slope / (2 * lost);
      scale = best > 0.1 * scale ? Math.min(best, 0.5 * scale) : 0.1 * scale;
    }
    return false;
  }

  private LikelihoodPoint evaluate(double[] x) {
    int varying = point.tau.length;
    return marginal.at(Arrays.copyOf(x, varying), Arrays.copyOfRange(x, varying, x.length));
  }

  private static double[] join(LikelihoodPoint point) {
    double[] x = Arrays.copyOf(point.tau, point.tau.length + point.beta.length);
    System.arraycopy(point.beta, 0, x, point.tau.length, point.beta.length);
    return x;
  }
}
