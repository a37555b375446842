package org.taketally.model;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Maximises a marginal log-likelihood over tau (not below 0) and beta.
 *
 * <p>Quasi-Newton in (tau, beta): the information at the current point (expected for tau, Schur
 * complement for beta) corrected by the last few changes of the gradient (L-BFGS; Nocedal and
 * Wright 2006, algorithm 7.4). In a balanced design one such step from afar lands on the variances.
 */
final class Search {

  /** Below this a variance counts as being at zero: a standard deviation of 1e-4 logits. */
  static final double FLOOR = 1e-8;

  private static final int MEMORY = 8;

  /** Gradient changes over steps that gain more say little about the curvature at the maximum. */
  private static final double NEARBY = 2;

  /** A gain below this share of the log-likelihood moves no estimate by 1e-3 standard errors. */
  private static final double SHARE = 1e-13;

  private record Change(double[] step, double[] slopeLost) {}

  private final Marginal marginal;
  private final FitOptions options;
  private final boolean[] fixed;
  private final Deque<Change> changes = new ArrayDeque<>();
  private final List<SearchStep> log = new ArrayList<>();
  private Point point;
  private boolean bounded;
  private boolean converged;

  /** Parameters marked in {@code fixed}, (tau, beta), stay where they start. */
  Search(Marginal marginal, FitOptions options, boolean[] fixed) {
    this.marginal = marginal;
    this.options = options;
    this.fixed = fixed.clone();
  }

  List<SearchStep> log() {
    return log;
  }

  boolean converged() {
    return converged;
  }

  Point run(double[] tau, double[] beta) {
    point = marginal.at(tau, beta);
    if (Double.isNaN(point.logLikelihood)) {
      throw new IllegalStateException("no modes at the start of the search");
    }
    marginal.differentiate(point);
    for (int step = 0; step <= options.maxSteps(); step++) {
      double[] direction = direction();
      double gain = Vectors.dot(direction, point.gradient) / 2;
      record(step, gain);
      if (gain < Math.max(options.tolerance(), SHARE * Math.abs(point.logLikelihood))) {
        converged = true;
        break;
      }
      if (step == options.maxSteps() || !advance(direction)) {
        break;
      }
    }
    return point;
  }

  private void record(int step, double gain) {
    SearchStep made =
        new SearchStep(
            step,
            point.logLikelihood,
            Math.max(0, gain),
            Arrays.stream(point.thetas()).boxed().toList());
    log.add(made);
    options.progress().accept(made);
  }

  /** Moves along the direction, shortened until the log-likelihood rises. */
  private boolean advance(double[] direction) {
    double[] here = join(point);
    double slope = Vectors.dot(direction, point.gradient);
    double noise = 1e-11 * Math.abs(point.logLikelihood) + 1e-10;
    double scale = 1;
    for (int attempt = 0; attempt < 30; attempt++) {
      Point next = evaluate(Vectors.plus(here, scale, direction));
      if (next.logLikelihood >= point.logLikelihood + 1e-4 * scale * slope - noise) {
        marginal.differentiate(next);
        if (slope < NEARBY && !bounded) {
          remember(next, here);
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

  private void remember(Point next, double[] here) {
    double[] step = Vectors.plus(join(next), -1, here);
    double[] lost = Vectors.plus(point.gradient, -1, next.gradient);
    if (Vectors.dot(step, lost)
        > 1e-10 * Math.sqrt(Vectors.dot(step, step) * Vectors.dot(lost, lost))) {
      changes.addLast(new Change(step, lost));
      if (changes.size() > MEMORY) {
        changes.removeFirst();
      }
    }
  }

  private Point evaluate(double[] x) {
    int varying = point.tau.length;
    return marginal.at(Arrays.copyOf(x, varying), Arrays.copyOfRange(x, varying, x.length));
  }

  private static double[] join(Point point) {
    double[] x = Arrays.copyOf(point.tau, point.tau.length + point.beta.length);
    System.arraycopy(point.beta, 0, x, point.tau.length, point.beta.length);
    return x;
  }

  private double[] direction() {
    int[] free = free();
    double[] slope = pick(point.gradient, free);
    SmallMatrix information = SmallMatrix.of(SmallMatrix.part(point.information, free));
    if (information == null) {
      return new double[point.gradient.length];
    }
    double[] move = twoLoop(slope, free, information);
    if (!(Vectors.dot(move, slope) > 0)) {
      changes.clear();
      move = information.solve(slope);
    }
    double[] direction = new double[point.gradient.length];
    bounded = false;
    for (int j = 0; j < free.length; j++) {
      direction[free[j]] = bounded(free[j], move[j]);
      bounded |= direction[free[j]] != move[j];
    }
    return direction;
  }

  private double bounded(int parameter, double move) {
    if (parameter >= point.tau.length) {
      return move;
    }
    double tau = point.tau[parameter];
    if (tau + move <= FLOOR) {
      return Math.max(FLOOR, tau > 0.01 ? tau / 10 : FLOOR) - tau;
    }
    return Math.min(move, 8 * tau + 0.5);
  }

  private double[] twoLoop(double[] slope, int[] free, SmallMatrix information) {
    double[] q = slope.clone();
    List<double[]> steps = new ArrayList<>();
    List<double[]> losts = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    for (Iterator<Change> it = changes.descendingIterator(); it.hasNext(); ) {
      Change change = it.next();
      double[] step = pick(change.step(), free);
      double[] lost = pick(change.slopeLost(), free);
      double curvature = Vectors.dot(step, lost);
      if (curvature > 1e-10 * Math.sqrt(Vectors.dot(step, step) * Vectors.dot(lost, lost))) {
        double weight = Vectors.dot(step, q) / curvature;
        q = Vectors.plus(q, -weight, lost);
        steps.add(step);
        losts.add(lost);
        weights.add(weight);
      }
    }
    double[] move = information.solve(q);
    for (int m = steps.size() - 1; m >= 0; m--) {
      double back = Vectors.dot(losts.get(m), move) / Vectors.dot(steps.get(m), losts.get(m));
      move = Vectors.plus(move, weights.get(m) - back, steps.get(m));
    }
    return move;
  }

  /** All but those fixed and variances held at the floor by the slope. */
  private int[] free() {
    return IntStream.range(0, point.gradient.length)
        .filter(j -> !fixed[j])
        .filter(
            j ->
                j >= point.tau.length || point.tau[j] > FLOOR * (1 + 1e-9) || point.gradient[j] > 0)
        .toArray();
  }

  private static double[] pick(double[] values, int[] index) {
    double[] picked = new double[index.length];
    for (int j = 0; j < index.length; j++) {
      picked[j] = values[index[j]];
    }
    return picked;
  }
}
