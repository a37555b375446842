package org.taketally.model;

/** Laplace marginal likelihood by blocks: no dense matrix over all levels. */
final class BlockLaplace implements Marginal {

  /** Modes are found when one more step would gain less than this. */
  private static final double MODES_FOUND = 1e-19;

  /** A step with an old decomposition must cut the promised gain by this, or it is renewed. */
  private static final double STALE = 0.05;

  private final Evidence evidence;
  private final SortedCells sorted;
  private final Parallel parallel;
  private final CellPass pass;
  private LevelVector deviations;
  private BlockFactor factor;
  private double[] factorTheta;

  BlockLaplace(Evidence evidence, SortedCells sorted, Parallel parallel) {
    this.evidence = evidence;
    this.sorted = sorted;
    this.parallel = parallel;
    this.pass = new CellPass(sorted, evidence.takes(), parallel);
    this.deviations = new LevelVector(sorted);
  }

  @Override
  public Point at(double[] tau, double[] beta) {
    Point point = new Point(tau, beta);
    double value = modes(point);
    point.logLikelihood = value - factor.logDeterminant(false) / 2;
    point.modes = split(deviations);
    return point;
  }

  /** Finds the modes given theta and beta, and decomposes there. */
  private double modes(Point point) {
    double[] theta = point.thetas();
    Scales scales = Scales.of(sorted, theta);
    zeroWhereThetaIs(scales);
    double[] fixedPart = evidence.patterns().times(point.beta);
    LevelVector residuals = new LevelVector(sorted);
    double value = pass.look(fixedPart, deviations, residuals) - penalty(scales);
    boolean stale = factor != null && near(theta, factorTheta);
    double promised = Double.POSITIVE_INFINITY;
    for (int iteration = 0; iteration < 200; iteration++) {
      if (!stale) {
        factor = new BlockFactor(sorted, scales, pass, parallel);
        factorTheta = theta;
      }
      LevelVector slope = slope(residuals, scales);
      LevelVector step = slope.copy();
      new BlockSolver(factor).solve(step);
      double gain = slope.dot(step);
      if (!(gain >= MODES_FOUND) || (gain < 1e-14 && gain > promised / 2)) {
        break;
      }
      scales.apply(step);
      value = move(fixedPart, step, residuals, scales, value);
      if (!stale && gain < 1e-11) {
        break;
      }
      stale = gain < 1e-2 && gain < STALE * promised;
      promised = gain;
    }
    factor = new BlockFactor(sorted, scales, pass, parallel);
    factorTheta = theta;
    return value;
  }

  private double move(
      double[] fixedPart, LevelVector step, LevelVector residuals, Scales scales, double value) {
    LevelVector start = deviations;
    double scale = 1;
    double noise = 1e-12 * Math.abs(value) + 1e-12;
    while (true) {
      deviations = start.copy();
      deviations.add(scale, step);
      double next = pass.look(fixedPart, deviations, residuals) - penalty(scales);
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
      if (scales.chain()[d] == 0) {
        java.util.Arrays.fill(deviations.chain[d], 0);
      }
    }
    for (int a = 0; a < sorted.rest; a++) {
      if (scales.rest()[a] == 0) {
        deviations.rest[a] = 0;
      }
    }
    java.util.Arrays.fill(deviations.rest, sorted.rest, deviations.rest.length, 0);
  }

  /** u'u / 2. */
  private double penalty(Scales scales) {
    double sum = 0;
    for (int d = 0; d < sorted.depths; d++) {
      double theta = scales.chain()[d];
      for (double b : deviations.chain[d]) {
        sum += theta > 0 ? b / theta * (b / theta) : 0;
      }
    }
    for (int a = 0; a < sorted.rest; a++) {
      double theta = scales.rest()[a];
      sum += theta > 0 ? deviations.rest[a] / theta * (deviations.rest[a] / theta) : 0;
    }
    return sum / 2;
  }

  /** theta Z'(y - n mu) - u; 0 for fixed columns. */
  private LevelVector slope(LevelVector residuals, Scales scales) {
    LevelVector slope = new LevelVector(sorted);
    for (int d = 0; d < sorted.depths; d++) {
      double theta = scales.chain()[d];
      for (int node = 0; node < slope.chain[d].length && theta > 0; node++) {
        slope.chain[d][node] = theta * residuals.chain[d][node] - deviations.chain[d][node] / theta;
      }
    }
    for (int a = 0; a < sorted.rest; a++) {
      double theta = scales.rest()[a];
      slope.rest[a] = theta > 0 ? theta * residuals.rest[a] - deviations.rest[a] / theta : 0;
    }
    return slope;
  }

  @Override
  public void differentiate(Point point) {
    SelectedInverse inverse = new SelectedInverse(factor, false, parallel);
    LevelVector t = new VarianceSums(inverse, pass).sums(parallel);
    LevelVector residuals = new LevelVector(sorted);
    pass.look(evidence.patterns().times(point.beta), deviations, residuals);
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
    double[][] rho = split(residuals);
    double[][] solved = split(c);
    point.variances = new Information(inverse, evidence).fill(point, factor.schurOfFixed());
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

  /** From the order of elimination to one array a varying column. */
  private double[][] split(LevelVector vector) {
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
