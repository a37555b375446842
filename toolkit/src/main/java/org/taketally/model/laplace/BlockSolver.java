package org.taketally.model.laplace;

import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.Vectors;

/** Solves with a decomposition: forward through the chain and remainder, and back. */
public final class BlockSolver {

  private final BlockFactor factor;
  private final SortedCells sorted;
  private final int fixed;

  public BlockSolver(BlockFactor factor) {
    this.factor = factor;
    this.sorted = factor.sorted;
    this.fixed = sorted.patterns.width();
  }

  /** Solves the joint system in place. */
  public void solveJoint(LevelVector b) {
    forward(b);
    Dense.solveLower(factor.upper, b.rest, factor.width);
    Dense.solveUpper(factor.upper, b.rest, factor.width);
    back(b, false);
  }

  /**
   * Solves H c = b in place; the fixed part of {@code b} must be 0.
   *
   * @return -M' c, one a fixed column
   */
  public double[] solve(LevelVector b) {
    forward(b);
    Dense.solveLower(factor.upper, b.rest, sorted.rest);
    double[] carried = java.util.Arrays.copyOfRange(b.rest, sorted.rest, factor.width);
    java.util.Arrays.fill(b.rest, sorted.rest, factor.width, 0);
    Dense.solveUpper(factor.upper, b.rest, sorted.rest);
    back(b, false);
    return carried;
  }

  /** Turns independent standard normals, in place, into a draw with the joint precision. */
  public void draw(LevelVector z) {
    Dense.solveUpper(factor.upper, z.rest, factor.width);
    back(z, true);
  }

  private void forward(LevelVector b) {
    double[] rest = new double[factor.width];
    for (int d = 0; d < sorted.depths; d++) {
      for (int node = 0; node < b.chain[d].length; node++) {
        double theta = factor.scales.of(d, node);
        double y = b.chain[d][node] / factor.diagonal[d][node];
        if (y == 0 || theta == 0) {
          continue;
        }
        int at = node;
        for (int e = d + 1; e < sorted.depths; e++) {
          at = sorted.parent[e - 1][at];
          b.chain[e][at] -= factor.scales.chain()[e] * factor.weight[d][node] * theta * y;
        }
        if (d == 0) {
          spread(node, -theta * y, rest);
        } else {
          double scale = -b.chain[d][node] / Math.sqrt(factor.diagonal[d][node]);
          Dense.axpy(rest, scale, factor.rows[d - 1][node], 0, factor.width);
        }
      }
    }
    for (int a = 0; a < rest.length; a++) {
      b.rest[a] += factor.scales.rest()[a] * rest[a];
    }
  }

  private void spread(int node, double scale, double[] rest) {
    for (int at = sorted.metFrom[node]; at < sorted.metFrom[node + 1]; at++) {
      rest[sorted.met[at]] += scale * factor.metWeight[at];
    }
    for (int j = 0; j < fixed; j++) {
      rest[sorted.rest + j] += scale * factor.fixedWeight[node * fixed + j];
    }
  }

  private void back(LevelVector b, boolean roots) {
    double[] rest = new double[factor.width];
    for (int a = 0; a < rest.length; a++) {
      rest[a] = factor.scales.rest()[a] * b.rest[a];
    }
    for (int d = sorted.depths - 1; d >= 0; d--) {
      for (int node = 0; node < b.chain[d].length; node++) {
        double theta = factor.scales.of(d, node);
        double dd = factor.diagonal[d][node];
        double above = factor.weight[d][node] * coarser(b, d, node);
        double coupled =
            d == 0
                ? theta * met(node, rest)
                : Math.sqrt(dd) * Vectors.dot(factor.rows[d - 1][node], rest);
        double right = b.chain[d][node];
        b.chain[d][node] = ((roots ? Math.sqrt(dd) * right : right) - theta * above - coupled) / dd;
      }
    }
  }

  /** Sum of theta x over the coarser nodes a node lies in. */
  private double coarser(LevelVector b, int d, int node) {
    double sum = 0;
    int at = node;
    for (int e = d + 1; e < sorted.depths; e++) {
      at = sorted.parent[e - 1][at];
      sum += factor.scales.chain()[e] * b.chain[e][at];
    }
    return sum;
  }

  private double met(int node, double[] rest) {
    int from = sorted.metFrom[node];
    return Vectors.dotAt(factor.metWeight, rest, sorted.met, from, sorted.metFrom[node + 1])
        + Vectors.dot(factor.fixedWeight, node * fixed, rest, sorted.rest, fixed);
  }
}
