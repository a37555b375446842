package org.taketally.model.laplace;

import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.Parallel;

/**
 * t = w' v of every cell, v the variance of its eta, summed over levels and fixed columns: how fast
 * log|H| / 2 changes with eta, twice.
 */
public final class VarianceSums {

  private final SelectedInverse inverse;
  private final SortedCells sorted;
  private final CellPass pass;

  public VarianceSums(SelectedInverse inverse, CellPass pass) {
    this.inverse = inverse;
    this.sorted = inverse.sorted;
    this.pass = pass;
  }

  /** Z't and X't. */
  public LevelVector sums(Parallel parallel) {
    LevelVector total = new LevelVector(sorted);
    double[][] parts = new double[sorted.pieceCount()][total.rest.length];
    double[][] perPattern = new double[parts.length][sorted.patterns.rows().length];
    parallel.run(parts.length, piece -> piece(piece, total, parts[piece], perPattern[piece]));
    for (int piece = 0; piece < parts.length; piece++) {
      for (int r = 0; r < perPattern[piece].length; r++) {
        double t = perPattern[piece][r];
        double[] x = sorted.patterns.rows()[r];
        for (int j = 0; j < x.length && t != 0; j++) {
          parts[piece][sorted.rest + j] += t * x[j];
        }
      }
      Dense.axpy(total.rest, 1, parts[piece], 0, total.rest.length);
    }
    return total;
  }

  private void piece(int piece, LevelVector total, double[] rest, double[] perPattern) {
    double[] along = new double[inverse.rows.length > 0 ? inverse.width : 0];
    int lastTop = -1;
    int columns = sorted.restOf.length;
    for (int node = sorted.pieceFrom[piece]; node < sorted.pieceFrom[piece + 1]; node++) {
      if (sorted.depths > 1 && sorted.parent[0][node] != lastTop) {
        lastTop = sorted.parent[0][node];
        coarserRows(node, along);
      }
      double chain = inverse.chainVariance(node);
      double sum = 0;
      for (int i = sorted.start[node]; i < sorted.start[node + 1]; i++) {
        double v = chain;
        for (int f = 0; f < columns; f++) {
          int a = sorted.restOf[f][i];
          double[] row = inverse.rest[a];
          double cross = inverse.met[sorted.metAt[f][i]];
          if (along.length > 0) {
            cross += along[a];
          }
          for (int g = f + 1; g < columns; g++) {
            cross += row[sorted.restOf[g][i]];
          }
          v += row[a] + 2 * cross;
        }
        double t = weightSlope(i) * v;
        sum += t;
        for (int f = 0; f < columns; f++) {
          rest[sorted.restOf[f][i]] += t;
        }
        perPattern[sorted.pattern[i]] += t;
      }
      for (int d = 0; d < sorted.depths; d++) {
        total.chain[d][inverse.ancestor(0, node, d)] += sum;
      }
    }
  }

  private void coarserRows(int node, double[] along) {
    java.util.Arrays.fill(along, 0);
    for (int e = 1; e < sorted.depths; e++) {
      Dense.axpy(along, 1, inverse.rows[e - 1][inverse.ancestor(0, node, e)], 0, along.length);
    }
  }

  /** w' = n mu (1 - mu) (1 - 2 mu). */
  private double weightSlope(int i) {
    double eta = pass.eta()[i];
    double e = Math.exp(-Math.abs(eta));
    double slope = pass.grafts(i) * e * (1 - e) / ((1 + e) * (1 + e) * (1 + e));
    return eta > 0 ? -slope : slope;
  }
}
