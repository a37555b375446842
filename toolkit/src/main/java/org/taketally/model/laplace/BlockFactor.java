package org.taketally.model.laplace;

import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.Parallel;

/**
 * The decomposition of the joint matrix [[H, M], [M', X'WX]], M = Lambda Z'WX, at one choice of
 * theta and eta, level by level.
 *
 * <p>A node of depth d has weight W (of its cells, less what finer nodes took), D = 1 + theta^2 W,
 * and one coupling to each level of the remainder and fixed column. To every coarser node of the
 * chain it couples by W itself, because all its cells lie there. Rows of depth 1 and up are kept
 * times theta / sqrt(D); those of depth 0 sparse.
 */
public final class BlockFactor {

  private static final int PANEL = 32;

  public final SortedCells sorted;
  public final Scales scales;
  public final int width;

  /** W and D of each node. */
  public final double[][] weight;

  public final double[][] diagonal;

  /** Couplings of nodes of depth 0 to the levels they meet, and to fixed columns. */
  public final double[] metWeight;

  public final double[] fixedWeight;

  /** Rows of depths 1 and up, in {@code rows[d - 1]}, times theta / sqrt(D). */
  public final double[][][] rows;

  /** U of the remainder and fixed columns. */
  public final double[][] upper;

  private final Parallel parallel;
  private final int decomposed;

  /**
   * Decomposes.
   *
   * @param room the {@link #upper} of another one that nobody needs any more, to be written over;
   *     null if there is none
   */
  public BlockFactor(
      SortedCells sorted, Scales scales, CellPass pass, Parallel parallel, double[][] room) {
    this.sorted = sorted;
    this.scales = scales;
    this.parallel = parallel;
    this.width = sorted.rest + sorted.patterns.width();
    this.weight = new double[sorted.depths][];
    this.diagonal = new double[sorted.depths][];
    this.rows = new double[sorted.depths - 1][][];
    int rowCount = 0;
    for (int d = 0; d < sorted.depths; d++) {
      weight[d] = new double[sorted.levelOf[d].length];
      diagonal[d] = new double[sorted.levelOf[d].length];
      if (d > 0) {
        rows[d - 1] = Dense.zeros(sorted.levelOf[d].length, width);
        rowCount += rows[d - 1].length;
      }
    }
    this.metWeight = new double[sorted.met.length];
    this.fixedWeight = new double[sorted.levelOf[0].length * sorted.patterns.width()];
    double[][][] parts = new double[sorted.pieceCount()][][];
    parallel.run(
        parts.length,
        piece -> parts[piece] = new Piece(piece, pass, piece == 0 ? room : null).matrix());
    closeUpperNodes();
    this.upper = sum(parts);
    this.decomposed = finish(rowCount);
  }

  private double[][] sum(double[][][] parts) {
    double[][] total = parts[0];
    parallel.run(
        width,
        row -> {
          for (int piece = 1; piece < parts.length; piece++) {
            Dense.axpy(total[row], 1, parts[piece][row], row, width);
          }
        });
    return total;
  }

  /** Pushes rows to their parents, then scales them. */
  private void closeUpperNodes() {
    for (int d = 1; d < sorted.depths; d++) {
      double theta = scales.chain()[d];
      for (int node = 0; node < weight[d].length; node++) {
        double w = weight[d][node];
        double dd = 1 + theta * theta * w;
        diagonal[d][node] = dd;
        double[] row = rows[d - 1][node];
        if (d + 1 < sorted.depths) {
          int up = sorted.parent[d][node];
          weight[d + 1][up] += w / dd;
          Dense.axpy(rows[d][up], 1 / dd, row, 0, width);
        }
        double scale = theta / Math.sqrt(dd);
        for (int j = 0; j < width; j++) {
          row[j] *= scale;
        }
      }
    }
  }

  private int finish(int rowCount) {
    double[][] all = new double[rowCount][];
    int at = 0;
    for (double[][] some : rows) {
      System.arraycopy(some, 0, all, at, some.length);
      at += some.length;
    }
    Dense dense = new Dense(parallel);
    dense.addUpper(new Dense.Product(upper, all, true, all, 0, rowCount, -1), 0, width);
    double[] theta = scales.rest();
    for (int i = 0; i < width; i++) {
      for (int j = i; j < width; j++) {
        upper[i][j] *= theta[i] * theta[j];
      }
      if (i < sorted.rest) {
        upper[i][i] += 1;
      }
    }
    return dense.cholesky(upper);
  }

  /** Whether the fixed columns could be decomposed too; false if an effect runs to infinity. */
  public boolean complete() {
    return decomposed == width;
  }

  /** log|H|, or with the fixed columns the whole matrix's. */
  public double logDeterminant(boolean joint) {
    double sum = 0;
    for (double[] depth : diagonal) {
      for (double d : depth) {
        sum += Math.log(d);
      }
    }
    for (int i = 0; i < (joint ? width : sorted.rest); i++) {
      sum += 2 * Math.log(upper[i][i]);
    }
    return sum;
  }

  /** X'WX - M' inverse(H) M. */
  public double[][] schurOfFixed() {
    int fixed = width - sorted.rest;
    double[][] schur = new double[fixed][fixed];
    for (int k = 0; k < fixed; k++) {
      double[] row = upper[sorted.rest + k];
      for (int i = k; i < fixed; i++) {
        for (int j = k; j < fixed; j++) {
          schur[i][j] += row[sorted.rest + i] * row[sorted.rest + j];
        }
      }
    }
    return schur;
  }

  /** Cells and nodes of one piece of work. */
  private final class Piece {
    private final double[][] matrix;
    private final double[][] panel = Dense.zeros(PANEL, width);
    private final int fixed = sorted.patterns.width();
    private int used;

    Piece(int piece, CellPass pass, double[][] room) {
      matrix = room == null ? Dense.zeros(width, width) : Dense.cleared(room);
      double[] perPattern = new double[sorted.patterns.rows().length];
      for (int node = sorted.pieceFrom[piece]; node < sorted.pieceFrom[piece + 1]; node++) {
        collect(node, pass, perPattern);
        eliminate(node);
      }
      flush();
      for (int r = 0; r < perPattern.length; r++) {
        if (perPattern[r] != 0) {
          square(perPattern[r], sorted.patterns.rows()[r], sorted.filled[r]);
        }
      }
    }

    double[][] matrix() {
      return matrix;
    }

    private void square(double[][] target, double scale, double[] x, int from) {
      int rest = sorted.rest;
      for (int i = 0; i < fixed; i++) {
        double a = scale * x[from + i];
        if (a != 0) {
          double[] row = target[rest + i];
          for (int j = i; j < fixed; j++) {
            row[rest + j] += a * x[from + j];
          }
        }
      }
    }

    /** The same of a row that is zero but in few places. */
    private void square(double scale, double[] x, int[] filled) {
      int rest = sorted.rest;
      for (int k = 0; k < filled.length; k++) {
        double a = scale * x[filled[k]];
        double[] row = matrix[rest + filled[k]];
        for (int l = k; l < filled.length; l++) {
          row[rest + filled[l]] += a * x[filled[l]];
        }
      }
    }

    private void collect(int node, CellPass pass, double[] perPattern) {
      double[] eta = pass.eta();
      double total = 0;
      int fixedAt = node * fixed;
      for (int i = sorted.start[node]; i < sorted.start[node + 1]; i++) {
        double e = Math.exp(-Math.abs(eta[i]));
        double w = pass.grafts(i) * e / ((1 + e) * (1 + e));
        total += w;
        perPattern[sorted.pattern[i]] += w;
        double[] x = sorted.patterns.rows()[sorted.pattern[i]];
        int[] filled = sorted.filled[sorted.pattern[i]];
        for (int j : filled) {
          fixedWeight[fixedAt + j] += w * x[j];
        }
        for (int f = 0; f < sorted.restOf.length; f++) {
          int a = sorted.restOf[f][i];
          metWeight[sorted.metAt[f][i]] += w;
          double[] row = matrix[a];
          row[a] += w;
          for (int g = f + 1; g < sorted.restOf.length; g++) {
            row[sorted.restOf[g][i]] += w;
          }
          for (int j : filled) {
            row[sorted.rest + j] += w * x[j];
          }
        }
      }
      weight[0][node] = total;
    }

    private void eliminate(int node) {
      double theta = scales.of(0, node);
      double w = weight[0][node];
      double dd = 1 + theta * theta * w;
      diagonal[0][node] = dd;
      int from = sorted.metFrom[node];
      int to = sorted.metFrom[node + 1];
      if (sorted.depths > 1) {
        int up = sorted.parent[0][node];
        weight[1][up] += w / dd;
        double[] row = rows[0][up];
        for (int at = from; at < to; at++) {
          row[sorted.met[at]] += metWeight[at] / dd;
        }
        for (int j = 0; j < fixed; j++) {
          row[sorted.rest + j] += fixedWeight[node * fixed + j] / dd;
        }
      }
      if (theta > 0) {
        if (to - from > PANEL && 4 * (to - from) > sorted.rest) {
          gather(node, theta / Math.sqrt(dd));
        } else {
          subtract(node, theta * theta / dd);
        }
      }
    }

    private void subtract(int node, double f) {
      int to = sorted.metFrom[node + 1];
      for (int at = sorted.metFrom[node]; at < to; at++) {
        double[] row = matrix[sorted.met[at]];
        double a = f * metWeight[at];
        for (int other = at; other < to; other++) {
          row[sorted.met[other]] -= a * metWeight[other];
        }
        for (int j = 0; j < fixed; j++) {
          row[sorted.rest + j] -= a * fixedWeight[node * fixed + j];
        }
      }
      square(matrix, -f, fixedWeight, node * fixed);
    }

    private void gather(int node, double scale) {
      double[] row = panel[used++];
      java.util.Arrays.fill(row, 0);
      for (int at = sorted.metFrom[node]; at < sorted.metFrom[node + 1]; at++) {
        row[sorted.met[at]] = scale * metWeight[at];
      }
      for (int j = 0; j < fixed; j++) {
        row[sorted.rest + j] = scale * fixedWeight[node * fixed + j];
      }
      if (used == PANEL) {
        flush();
      }
    }

    private void flush() {
      new Dense(new Parallel(1))
          .addUpper(new Dense.Product(matrix, panel, true, panel, 0, used, -1), 0, width);
      used = 0;
    }
  }
}
