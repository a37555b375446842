package org.taketally.model.laplace;

import java.util.stream.IntStream;
import org.taketally.model.numeric.Dense;
import org.taketally.model.numeric.Parallel;
import org.taketally.model.numeric.SmallMatrix;
import org.taketally.model.numeric.Vectors;
import org.taketally.terms.Logit;

/**
 * Sums over cells of w' v and of w' times cubed covariances of eta with each effect of the cell; v
 * is the variance of eta, under Jeffreys' prior that given beta.
 */
public final class JointSums {

  private final SelectedInverse inverse;
  private final SortedCells sorted;
  private final LevelVector slopes;
  private final LevelVector cubes;
  private final CellPass pass;
  private final int fixed;

  /** Inverse of the covariance of the fixed effects; empty under a flat prior. */
  private final double[][] information;

  public JointSums(SelectedInverse inverse, CellPass pass, boolean jeffreys, Parallel parallel) {
    this.inverse = inverse;
    this.pass = pass;
    this.sorted = inverse.sorted;
    this.fixed = sorted.patterns.width();
    this.slopes = new LevelVector(sorted);
    this.cubes = new LevelVector(sorted);
    this.information = !jeffreys ? new double[0][] : fixedInformation();
    Piece[] pieces = new Piece[sorted.pieceCount()];
    parallel.run(pieces.length, piece -> pieces[piece] = new Piece(piece));
    for (Piece piece : pieces) {
      Dense.axpy(slopes.rest, 1, piece.slopes, 0, piece.slopes.length);
      Dense.axpy(cubes.rest, 1, piece.cubes, 0, piece.cubes.length);
    }
  }

  private double[][] fixedInformation() {
    int[] places = IntStream.range(sorted.rest, sorted.rest + fixed).toArray();
    SmallMatrix covariance = SmallMatrix.of(SmallMatrix.part(inverse.rest, places));
    return covariance == null ? new double[0][] : covariance.inverse();
  }

  /** A'(w' v). */
  public LevelVector slopes() {
    return slopes;
  }

  /** Sum of w' cov(eta, x)^3. */
  public LevelVector cubes() {
    return cubes;
  }

  public LevelVector variances() {
    LevelVector variances = new LevelVector(sorted);
    for (int d = 0; d < sorted.depths; d++) {
      System.arraycopy(inverse.variance[d], 0, variances.chain[d], 0, variances.chain[d].length);
    }
    for (int a = 0; a < variances.rest.length; a++) {
      variances.rest[a] = inverse.rest[a][a];
    }
    return variances;
  }

  /** Cells of one piece of work: whole top nodes, so that only the remainder is shared. */
  private final class Piece {
    private final double[] slopes = new double[JointSums.this.slopes.rest.length];
    private final double[] cubes = new double[slopes.length];
    private final double[] across = new double[sorted.restOf.length];
    private final double[] toFixed = new double[fixed];
    private final double[] informed = new double[fixed];

    Piece(int piece) {
      for (int node = sorted.pieceFrom[piece]; node < sorted.pieceFrom[piece + 1]; node++) {
        for (int i = sorted.start[node]; i < sorted.start[node + 1]; i++) {
          add(node, i);
        }
      }
    }

    /** The part of the variance of eta that is due to beta: c' I c, c = cov(eta, beta). */
    private double dueToFixed() {
      java.util.Arrays.fill(informed, 0);
      for (int j = 0; j < information.length; j++) {
        Dense.axpy(informed, toFixed[j], information[j], 0, fixed);
      }
      return Vectors.dot(informed, toFixed);
    }

    private void add(int node, int i) {
      double eta = pass.eta()[i];
      double mu = Logit.take(eta);
      double slope = pass.grafts(i) * mu * (1 - mu) * (1 - 2 * mu);
      double[] x = sorted.patterns.rows()[sorted.pattern[i]];
      withRest(node, i, x);
      double v = 0;
      for (int j = 0; j < fixed; j++) {
        v += x[j] * toFixed[j];
        cubes[sorted.rest + j] += slope * cube(toFixed[j]);
      }
      for (int f = 0; f < across.length; f++) {
        v += across[f];
        cubes[sorted.restOf[f][i]] += slope * cube(across[f]);
      }
      for (int d = 0; d < sorted.depths; d++) {
        double covariance = withChain(node, d, i, x);
        v += covariance;
        JointSums.this.cubes.chain[d][inverse.ancestor(0, node, d)] += slope * cube(covariance);
      }
      double t = slope * (v - dueToFixed());
      for (int d = 0; d < sorted.depths; d++) {
        JointSums.this.slopes.chain[d][inverse.ancestor(0, node, d)] += t;
      }
      for (int[] levels : sorted.restOf) {
        slopes[levels[i]] += t;
      }
      for (int j = 0; j < fixed; j++) {
        slopes[sorted.rest + j] += t * x[j];
      }
    }

    private static double cube(double c) {
      return c * c * c;
    }

    /** Covariances of eta with the cell's levels of the remainder and with the fixed effects. */
    private void withRest(int node, int i, double[] x) {
      int[] filled = sorted.filled[sorted.pattern[i]];
      System.arraycopy(inverse.fixed, node * fixed, toFixed, 0, fixed);
      for (int e = 1; e < sorted.depths; e++) {
        addFixed(1, inverse.rows[e - 1][inverse.ancestor(0, node, e)]);
      }
      for (int[] levels : sorted.restOf) {
        addFixed(1, inverse.rest[levels[i]]);
      }
      for (int l : filled) {
        addFixed(x[l], inverse.rest[sorted.rest + l]);
      }
      for (int f = 0; f < across.length; f++) {
        int a = sorted.restOf[f][i];
        double sum = inverse.met[sorted.metAt[f][i]];
        for (int e = 1; e < sorted.depths; e++) {
          sum += inverse.rows[e - 1][inverse.ancestor(0, node, e)][a];
        }
        for (int[] levels : sorted.restOf) {
          sum += inverse.rest[a][levels[i]];
        }
        for (int j : filled) {
          sum += inverse.rest[a][sorted.rest + j] * x[j];
        }
        across[f] = sum;
      }
    }

    private void addFixed(double factor, double[] row) {
      for (int j = 0; j < fixed; j++) {
        toFixed[j] += factor * row[sorted.rest + j];
      }
    }

    private double withChain(int node, int d, int i, double[] x) {
      int here = inverse.ancestor(0, node, d);
      double sum = inverse.variance[d][here];
      for (int e = 0; e < sorted.depths; e++) {
        if (e < d) {
          sum += inverse.above[e][d][inverse.ancestor(0, node, e)];
        } else if (e > d) {
          sum += inverse.above[d][e][here];
        }
      }
      for (int f = 0; f < across.length; f++) {
        int a = sorted.restOf[f][i];
        sum += d == 0 ? inverse.met[sorted.metAt[f][i]] : inverse.rows[d - 1][here][a];
      }
      for (int j : sorted.filled[sorted.pattern[i]]) {
        sum +=
            x[j]
                * (d == 0
                    ? inverse.fixed[node * fixed + j]
                    : inverse.rows[d - 1][here][sorted.rest + j]);
      }
      return sum;
    }
  }
}
