package org.taketally.model.laplace;

import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.Parallel;
import org.taketally.terms.Logit;

/** One look at every cell at given effects and deviations: log-likelihood and residual sums. */
public final class CellPass {

  private final SortedCells sorted;
  private final double[] takes;
  private final double[] grafts;
  private final double[] eta;
  private final Parallel parallel;

  public CellPass(SortedCells sorted, int[] takes, Parallel parallel) {
    this.sorted = sorted;
    this.parallel = parallel;
    this.takes = new double[sorted.cells];
    this.grafts = new double[sorted.cells];
    this.eta = new double[sorted.cells];
    int[] summed = sorted.sums(takes);
    for (int i = 0; i < sorted.cells; i++) {
      this.takes[i] = summed[i];
      this.grafts[i] = sorted.grafts[i];
    }
  }

  /** Of the last look, one a sorted cell. */
  public double[] eta() {
    return eta;
  }

  public double residual(int cell) {
    return takes[cell] - Logit.takes(grafts[cell], eta[cell]);
  }

  public double grafts(int cell) {
    return grafts[cell];
  }

  /**
   * Log-likelihood given the deviations, and Z'(y - n mu), X'(y - n mu) into {@code residuals}.
   *
   * @param fixedPart X beta, one a pattern
   */
  public double look(double[] fixedPart, LevelVector deviations, LevelVector residuals) {
    int pieces = sorted.pieceCount();
    double[] values = new double[pieces];
    double[][] sums = new double[pieces][residuals.rest.length];
    for (double[] chain : residuals.chain) {
      java.util.Arrays.fill(chain, 0);
    }
    parallel.run(
        pieces,
        piece -> values[piece] = look(piece, fixedPart, deviations, residuals, sums[piece]));
    java.util.Arrays.fill(residuals.rest, 0);
    double value = 0;
    for (int piece = 0; piece < pieces; piece++) {
      value += values[piece];
      Dense.axpy(residuals.rest, 1, sums[piece], 0, sums[piece].length);
    }
    return value;
  }

  private double look(
      int piece, double[] fixedPart, LevelVector b, LevelVector residuals, double[] sums) {
    double value = 0;
    double[] perPattern = new double[fixedPart.length];
    for (int node = sorted.pieceFrom[piece]; node < sorted.pieceFrom[piece + 1]; node++) {
      double chain = 0;
      int at = node;
      for (int d = 0; d < sorted.depths; d++) {
        chain += b.chain[d][at];
        at = d + 1 < sorted.depths ? sorted.parent[d][at] : at;
      }
      double left = 0;
      for (int i = sorted.start[node]; i < sorted.start[node + 1]; i++) {
        double logit = fixedPart[sorted.pattern[i]] + chain;
        for (int[] levels : sorted.restOf) {
          logit += b.rest[levels[i]];
        }
        eta[i] = logit;
        double e = Math.exp(-Math.abs(logit));
        double mu = (logit >= 0 ? 1 : e) / (1 + e);
        value += takes[i] * logit - grafts[i] * (Math.max(logit, 0) + Math.log(1 + e));
        double residual = takes[i] - grafts[i] * mu;
        left += residual;
        for (int[] levels : sorted.restOf) {
          sums[levels[i]] += residual;
        }
        perPattern[sorted.pattern[i]] += residual;
      }
      at = node;
      for (int d = 0; d < sorted.depths; d++) {
        residuals.chain[d][at] += left;
        at = d + 1 < sorted.depths ? sorted.parent[d][at] : at;
      }
    }
    for (int r = 0; r < perPattern.length; r++) {
      if (perPattern[r] != 0) {
        double[] x = sorted.patterns.rows()[r];
        for (int j = 0; j < x.length; j++) {
          sums[sorted.rest + j] += perPattern[r] * x[j];
        }
      }
    }
    return value;
  }
}
