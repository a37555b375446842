package org.taketally.model.laplace;

import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.Parallel;
import org.taketally.model.numeric.Vectors;

/**
 * Covariances K of deviations where levels meet in a cell, given theta (and beta, unless joint).
 *
 * <p>From the coarsest: K of the remainder is dense; a node's row is minus theta^2/D times its
 * couplings times the rows already known.
 */
public final class SelectedInverse {

  public final BlockFactor factor;
  public final SortedCells sorted;

  /** Levels of the remainder, with the fixed columns if joint. */
  public final int width;

  public final double[][] rest;

  /** Variance of each node. */
  public final double[][] variance;

  /** Covariance of each node with the coarser nodes it lies in: {@code above[d][e][node]}. */
  public final double[][][] above;

  /** Rows of depths 1 and up. */
  public final double[][][] rows;

  /** Covariances of nodes of depth 0 with the levels they meet, and with fixed columns if joint. */
  public final double[] met;

  public final double[] fixed;

  private final Parallel parallel;
  private final boolean joint;

  public SelectedInverse(BlockFactor factor, boolean joint, Parallel parallel) {
    this.factor = factor;
    this.sorted = factor.sorted;
    this.joint = joint;
    this.parallel = parallel;
    this.width = joint ? factor.width : sorted.rest;
    this.rest = new Dense(parallel).inverse(factor.upper, width);
    double[] theta = factor.scales.rest();
    for (int i = 0; i < width; i++) {
      for (int j = 0; j < width; j++) {
        rest[i][j] *= theta[i] * theta[j];
      }
    }
    this.variance = new double[sorted.depths][];
    this.above = new double[sorted.depths][sorted.depths][];
    this.rows = new double[sorted.depths - 1][][];
    for (int d = sorted.depths - 1; d > 0; d--) {
      upper(d);
    }
    this.met = new double[sorted.met.length];
    this.fixed = new double[joint ? factor.fixedWeight.length : 0];
    allocate(0);
    parallel.run(
        sorted.pieceCount(),
        piece -> {
          for (int node = sorted.pieceFrom[piece]; node < sorted.pieceFrom[piece + 1]; node++) {
            finest(node);
          }
        });
  }

  private void allocate(int d) {
    variance[d] = new double[sorted.levelOf[d].length];
    for (int e = d + 1; e < sorted.depths; e++) {
      above[d][e] = new double[variance[d].length];
    }
  }

  /** theta^2 / D. */
  private double share(int d, int node) {
    double theta = factor.scales.of(d, node);
    return theta * theta / factor.diagonal[d][node];
  }

  private void upper(int d) {
    allocate(d);
    double[][] g = factor.rows[d - 1];
    double[][] result = Dense.zeros(g.length, width);
    rows[d - 1] = result;
    new Dense(parallel)
        .add(new Dense.Product(result, g, false, rest, 0, width, -1), 0, g.length, width);
    for (int node = 0; node < g.length; node++) {
      double f = share(d, node);
      double root = Math.sqrt(f);
      double w = factor.weight[d][node];
      double[] row = result[node];
      for (int j = 0; j < width; j++) {
        row[j] *= root;
      }
      int at = node;
      for (int e = d + 1; e < sorted.depths; e++) {
        at = sorted.parent[e - 1][at];
        Dense.axpy(row, -f * w, rows[e - 1][at], 0, width);
      }
      double explained = root * Vectors.dot(g[node], 0, row, 0, width);
      at = node;
      for (int e = d + 1; e < sorted.depths; e++) {
        at = sorted.parent[e - 1][at];
        above[d][e][node] =
            -f * w * betweenCoarser(d, node, e)
                - root * Vectors.dot(g[node], 0, rows[e - 1][at], 0, width);
        explained += f * w * above[d][e][node];
      }
      variance[d][node] = f - explained;
    }
  }

  /** Sum over the coarser nodes above a node of their covariance with the one of depth e. */
  public double betweenCoarser(int d, int node, int e) {
    double sum = 0;
    int other = ancestor(d, node, e);
    int at = node;
    for (int c = d + 1; c < sorted.depths; c++) {
      at = sorted.parent[c - 1][at];
      if (c == e) {
        sum += variance[e][at];
      } else {
        sum += c < e ? above[c][e][at] : above[e][c][other];
      }
    }
    return sum;
  }

  public int ancestor(int d, int node, int e) {
    int at = node;
    for (int c = d; c < e; c++) {
      at = sorted.parent[c][at];
    }
    return at;
  }

  private void finest(int node) {
    double f = share(0, node);
    double w = factor.weight[0][node];
    int from = sorted.metFrom[node];
    int to = sorted.metFrom[node + 1];
    double explained = 0;
    for (int at = from; at < to; at++) {
      int a = sorted.met[at];
      double sum = coupled(node, rest[a]);
      for (int e = 1; e < sorted.depths; e++) {
        sum += w * rows[e - 1][ancestor(0, node, e)][a];
      }
      met[at] = -f * sum;
      explained += factor.metWeight[at] * met[at];
    }
    int columns = sorted.patterns.width();
    for (int j = 0; j < columns && joint; j++) {
      double sum = coupled(node, rest[sorted.rest + j]);
      for (int e = 1; e < sorted.depths; e++) {
        sum += w * rows[e - 1][ancestor(0, node, e)][sorted.rest + j];
      }
      fixed[node * columns + j] = -f * sum;
      explained += factor.fixedWeight[node * columns + j] * fixed[node * columns + j];
    }
    for (int e = 1; e < sorted.depths; e++) {
      double[] row = rows[e - 1][ancestor(0, node, e)];
      above[0][e][node] = -f * (w * betweenCoarser(0, node, e) + coupled(node, row));
      explained += w * above[0][e][node];
    }
    variance[0][node] = f - f * explained;
  }

  /** Couplings of a node of depth 0 times a row over the remainder. */
  private double coupled(int node, double[] row) {
    int from = sorted.metFrom[node];
    double sum = Vectors.dotAt(factor.metWeight, row, sorted.met, from, sorted.metFrom[node + 1]);
    int columns = sorted.patterns.width();
    return joint
        ? sum + Vectors.dot(factor.fixedWeight, node * columns, row, sorted.rest, columns)
        : sum;
  }

  /** Variance of the chain's part of eta for cells of a node of depth 0. */
  public double chainVariance(int node) {
    double sum = variance[0][node];
    for (int e = 1; e < sorted.depths; e++) {
      sum += 2 * above[0][e][node] + betweenCoarser(0, node, e);
    }
    return sum;
  }
}
