package org.taketally.model.laplace;

import org.taketally.model.numeric.Parallel;

/** Laplace marginal likelihood by blocks: no dense matrix over all levels. */
public final class BlockLaplace implements Marginal {

  /** Modes are found when one more step would gain less than this. */
  private static final double FOUND = 1e-19;

  /** The same where densities are only compared: they are then right to about 1e-7. */
  private static final double FOUND_ROUGHLY = 1e-13;

  /** A step with a decomposition made on the spot that gains less than this is the last. */
  private static final double LAST_FRESH_GAIN = 1e-11;

  /** Below this a gain that no longer falls is noise. */
  private static final double NOISE = 1e-14;

  /** A decomposition is used again while no more steps than this would be left. */
  private static final double OLD_STEPS = 4;

  private final ModelData evidence;
  private final SortedCells sorted;
  private final Parallel parallel;
  private final CellPass pass;
  private LevelVector deviations;
  private BlockFactor factor;
  private double[] factorTheta;

  /** Whether somebody else still needs the decomposition in hand. */
  private boolean given;

  /** Room of a decomposition nobody needs any more, for the next. */
  private double[][] room;

  public BlockLaplace(ModelData evidence, SortedCells sorted, Parallel parallel) {
    this.evidence = evidence;
    this.sorted = sorted;
    this.parallel = parallel;
    this.pass = new CellPass(sorted, evidence.takes(), parallel);
    this.deviations = new LevelVector(sorted);
  }

  /** How many levels must be solved for together: the dense remainder. */
  public int together() {
    return sorted.rest;
  }

  public Parallel parallel() {
    return parallel;
  }

  @Override
  public BlockLaplace another() {
    return new BlockLaplace(evidence, sorted, new Parallel(1));
  }

  /** Starts looking for modes at these effects and deviations, whatever was found before. */
  public BlockLaplace startAt(LevelVector all) {
    deviations = all.copy();
    letGo();
    return this;
  }

  /** Starts looking for modes at these deviations, one array a varying column. */
  public BlockLaplace startAt(double[][] modes) {
    for (int d = 0; d < sorted.elimination.chain().size(); d++) {
      double[] of = modes[sorted.elimination.chain().get(d)];
      for (int node = 0; node < deviations.chain[d].length; node++) {
        deviations.chain[d][node] = of[sorted.levelOf[d][node]];
      }
    }
    for (int f = 0; f < sorted.restOf.length; f++) {
      double[] of = modes[sorted.elimination.rest().get(f)];
      System.arraycopy(of, 0, deviations.rest, sorted.restFrom[f], of.length);
    }
    return this;
  }

  @Override
  public LikelihoodPoint at(double[] tau, double[] beta) {
    LikelihoodPoint point = new LikelihoodPoint(tau, beta);
    startAtEffects(beta);
    double value = modes(point.thetas(), false, FOUND);
    point.logLikelihood = value - factor.logDeterminant(false) / 2;
    point.modes = split(deviations);
    return point;
  }

  /** The joint modes, unless an effect runs to infinity there. */
  @Override
  public double[] likelyEffects(double[] tau, double[] beta) {
    startAtEffects(beta);
    Likely likely = likely(tau, FOUND);
    int end = likely.mode().rest.length;
    return Double.isNaN(likely.logDensity())
        ? beta.clone()
        : java.util.Arrays.copyOfRange(likely.mode().rest, sorted.rest, end);
  }

  /** Modes of beta and deviations together, given tau, with a flat prior on beta. */
  public JointMode joint(double[] tau, double[] betaStart) {
    startAtEffects(betaStart);
    return joint(tau);
  }

  /** The same, starting where this stands. */
  public JointMode joint(double[] tau) {
    Likely likely = likely(tau, FOUND);
    given = true;
    return new JointMode(likely.logDensity(), factor, likely.mode(), pass, parallel);
  }

  /**
   * The log density of variances given the takes, up to a constant, and the joint modes there.
   *
   * @param logDensity NaN if an effect runs to infinity
   * @param mode of deviations, fixed effects last
   */
  public record Likely(double logDensity, LevelVector mode) {}

  /** Found well enough to compare densities, starting where this stands. */
  public Likely roughly(double[] tau) {
    return likely(tau, FOUND_ROUGHLY);
  }

  private Likely likely(double[] tau, double found) {
    double value = modes(new LikelihoodPoint(tau, new double[0]).thetas(), true, found);
    return new Likely(value - factor.logDeterminant(true) / 2, deviations.copy());
  }

  private void startAtEffects(double[] beta) {
    System.arraycopy(beta, 0, deviations.rest, sorted.rest, beta.length);
  }

  /** Finds the modes given theta (and beta, unless joint), and decomposes there. */
  private double modes(double[] theta, boolean joint, double found) {
    Scales scales = Scales.of(sorted, theta);
    zeroWhereThetaIs(scales);
    LevelVector residuals = new LevelVector(sorted);
    double value = look(residuals) - penalty(scales);
    boolean fresh = factor == null || !near(theta, factorTheta);
    if (fresh) {
      decompose(scales, theta);
    }
    double before = Double.POSITIVE_INFINITY;
    for (int iteration = 0; iteration < 200; iteration++) {
      LevelVector slope = slope(residuals, scales, joint);
      LevelVector step = solved(slope, joint);
      double gain = slope.dot(step);
      if (!fresh && tooSlow(gain, before, found)) {
        decompose(scales, theta);
        fresh = true;
        step = solved(slope, joint);
        gain = slope.dot(step);
      }
      if (!(gain >= found) || (gain < NOISE && gain > before / 2)) {
        break;
      }
      scales.apply(step);
      value = move(step, residuals, scales, value);
      boolean last = fresh && gain < LAST_FRESH_GAIN;
      fresh = false;
      before = gain;
      if (last) {
        break;
      }
    }
    if (!fresh) {
      decompose(scales, theta);
    }
    return value;
  }

  private LevelVector solved(LevelVector slope, boolean joint) {
    LevelVector step = slope.copy();
    if (joint && factor.complete()) {
      new BlockSolver(factor).solveJoint(step);
    } else {
      new BlockSolver(factor).solve(step);
    }
    return step;
  }

  /** Whether steps with the old decomposition, each cutting the gain by as much, are too many. */
  private static boolean tooSlow(double gain, double before, double found) {
    return gain > found
        && before < Double.POSITIVE_INFINITY
        && Math.log(found / gain) < OLD_STEPS * Math.log(gain / before);
  }

  private void decompose(Scales scales, double[] theta) {
    letGo();
    factor = new BlockFactor(sorted, scales, pass, parallel, room);
    factorTheta = theta;
    room = null;
  }

  private void letGo() {
    if (factor != null && !given) {
      room = factor.upper;
    }
    factor = null;
    given = false;
  }

  private double look(LevelVector residuals) {
    double[] beta =
        java.util.Arrays.copyOfRange(deviations.rest, sorted.rest, deviations.rest.length);
    return pass.look(evidence.patterns().times(beta), deviations, residuals);
  }

  private double move(LevelVector step, LevelVector residuals, Scales scales, double value) {
    LevelVector start = deviations;
    double scale = 1;
    double noise = 1e-12 * Math.abs(value) + 1e-12;
    while (true) {
      deviations = start.copy();
      deviations.add(scale, step);
      double next = look(residuals) - penalty(scales);
      if (next >= value - noise || scale < 1e-8) {
        return next;
      }
      scale /= 2;
    }
  }

  private static boolean near(double[] theta, double[] other) {
    for (int k = 0; k < theta.length; k++) {
      if (!(Math.abs(theta[k] - other[k]) <= 0.1 * other[k])) {
        return false;
      }
    }
    return true;
  }

  private void zeroWhereThetaIs(Scales scales) {
    for (int d = 0; d < sorted.depths; d++) {
      for (int node = 0; node < deviations.chain[d].length; node++) {
        if (scales.of(d, node) == 0) {
          deviations.chain[d][node] = 0;
        }
      }
    }
    for (int a = 0; a < sorted.rest; a++) {
      if (scales.rest()[a] == 0) {
        deviations.rest[a] = 0;
      }
    }
  }

  /** u'u / 2. */
  private double penalty(Scales scales) {
    double sum = 0;
    for (int d = 0; d < sorted.depths; d++) {
      for (int node = 0; node < deviations.chain[d].length; node++) {
        double theta = scales.of(d, node);
        double b = deviations.chain[d][node];
        sum += theta > 0 ? b / theta * (b / theta) : 0;
      }
    }
    for (int a = 0; a < sorted.rest; a++) {
      double theta = scales.rest()[a];
      sum += theta > 0 ? deviations.rest[a] / theta * (deviations.rest[a] / theta) : 0;
    }
    return sum / 2;
  }

  /** theta Z'(y - n mu) - u; for fixed columns 0, or X'(y - n mu) if joint. */
  private LevelVector slope(LevelVector residuals, Scales scales, boolean joint) {
    LevelVector slope = new LevelVector(sorted);
    for (int d = 0; d < sorted.depths; d++) {
      for (int node = 0; node < slope.chain[d].length; node++) {
        double theta = scales.of(d, node);
        slope.chain[d][node] =
            theta > 0 ? theta * residuals.chain[d][node] - deviations.chain[d][node] / theta : 0;
      }
    }
    for (int a = 0; a < sorted.rest; a++) {
      double theta = scales.rest()[a];
      slope.rest[a] = theta > 0 ? theta * residuals.rest[a] - deviations.rest[a] / theta : 0;
    }
    for (int a = sorted.rest; a < slope.rest.length && joint; a++) {
      slope.rest[a] = residuals.rest[a];
    }
    return slope;
  }

  @Override
  public void differentiate(LikelihoodPoint point) {
    SelectedInverse inverse = new SelectedInverse(factor, false, parallel);
    LevelVector t = new VarianceSums(inverse, pass).sums(parallel);
    LevelVector residuals = new LevelVector(sorted);
    look(residuals);
    LevelVector c = t.copy();
    java.util.Arrays.fill(c.rest, sorted.rest, c.rest.length, 0);
    factor.scales.apply(c);
    double[] carried = new BlockSolver(factor).solve(c);
    int varying = point.tau.length;
    point.gradient = new double[varying + point.beta.length];
    for (int j = 0; j < point.beta.length; j++) {
      point.gradient[varying + j] =
          residuals.rest[sorted.rest + j] - (t.rest[sorted.rest + j] + carried[j]) / 2;
    }
    for (int node = 0; node < sorted.exempt.length; node++) {
      residuals.chain[0][node] = sorted.exempt[node] ? 0 : residuals.chain[0][node];
    }
    double[][] rho = split(residuals);
    double[][] solved = split(c);
    point.variances = new ExpectedInformation(inverse, evidence).fill(point, factor.schurOfFixed());
    double[] theta = point.thetas();
    for (int k = 0; k < varying; k++) {
      double slope = 0;
      for (int j = 0; j < rho[k].length && theta[k] > 0; j++) {
        slope +=
            rho[k][j] * rho[k][j]
                - (1 - point.variances[k][j]) / point.tau[k]
                - solved[k][j] / theta[k] * rho[k][j];
      }
      point.gradient[k] = slope / 2;
    }
  }

  /** Where the levels of a varying column stand in the remainder; empty if it is in the chain. */
  public int[] placesInRemainder(int k) {
    int f = sorted.elimination.rest().indexOf(k);
    return f < 0
        ? new int[0]
        : java.util.stream.IntStream.range(sorted.restFrom[f], sorted.restFrom[f + 1]).toArray();
  }

  /** From the order of elimination to one array a varying column. */
  public double[][] split(LevelVector vector) {
    double[][] split = new double[evidence.varying()][];
    for (int d = 0; d < sorted.elimination.chain().size(); d++) {
      int k = sorted.elimination.chain().get(d);
      split[k] = new double[evidence.sizes()[k]];
      for (int node = 0; node < vector.chain[d].length; node++) {
        split[k][sorted.levelOf[d][node]] = vector.chain[d][node];
      }
    }
    for (int f = 0; f < sorted.restOf.length; f++) {
      split[sorted.elimination.rest().get(f)] =
          java.util.Arrays.copyOfRange(vector.rest, sorted.restFrom[f], sorted.restFrom[f + 1]);
    }
    return split;
  }
}
