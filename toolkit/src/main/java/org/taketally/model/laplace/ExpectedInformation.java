package org.taketally.model.laplace;

import java.util.Arrays;
import org.taketally.model.numeric.Vectors;

/**
 * Expected information of the variances, half the sum of squares of P = (I - C) / (theta theta)
 * over the positions of C that are known; the Schur complement for the fixed effects.
 */
public final class ExpectedInformation {

  private final SelectedInverse inverse;
  private final SortedCells sorted;
  private final ModelData evidence;

  public ExpectedInformation(SelectedInverse inverse, ModelData evidence) {
    this.inverse = inverse;
    this.sorted = inverse.sorted;
    this.evidence = evidence;
  }

  /** Fills the point's information; gives the variances of u, one array a varying column. */
  public double[][] fill(LikelihoodPoint point, double[][] schur) {
    int varying = point.tau.length;
    double[][] information = new double[varying + schur.length][varying + schur.length];
    for (int i = 0; i < schur.length; i++) {
      for (int j = 0; j < schur.length; j++) {
        information[varying + i][varying + j] = schur[Math.min(i, j)][Math.max(i, j)];
      }
    }
    double[][] squares = squares();
    double[][] variances = variances(point);
    for (int k = 0; k < varying; k++) {
      for (int l = 0; l < varying; l++) {
        if (point.tau[k] > 0 && point.tau[l] > 0) {
          double scale = point.tau[k] * point.tau[l];
          information[k][l] = squares[k][l] / (2 * scale * scale);
        }
      }
      for (int j = 0; j < variances[k].length && point.tau[k] > 0; j++) {
        double p = (1 - variances[k][j]) / point.tau[k];
        information[k][k] += p * p / 2;
      }
    }
    point.information = information;
    return variances;
  }

  private double[][] variances(LikelihoodPoint point) {
    double[][] variances = new double[point.tau.length][];
    for (int k = 0; k < variances.length; k++) {
      variances[k] = new double[evidence.sizes()[k]];
      Arrays.fill(variances[k], 1);
    }
    for (int d = 0; d < sorted.elimination.chain().size(); d++) {
      int k = sorted.elimination.chain().get(d);
      for (int node = 0; node < inverse.variance[d].length && point.tau[k] > 0; node++) {
        if (d == 0 && sorted.exempt[node]) {
          continue;
        }
        variances[k][sorted.levelOf[d][node]] = inverse.variance[d][node] / point.tau[k];
      }
    }
    for (int f = 0; f < sorted.restOf.length; f++) {
      int k = sorted.elimination.rest().get(f);
      for (int a = sorted.restFrom[f]; a < sorted.restFrom[f + 1] && point.tau[k] > 0; a++) {
        variances[k][a - sorted.restFrom[f]] = inverse.rest[a][a] / point.tau[k];
      }
    }
    return variances;
  }

  /** Sums of squares of K off the diagonal, by pairs of varying columns. */
  private double[][] squares() {
    double[][] squares = new double[evidence.varying()][evidence.varying()];
    for (int f = 0; f < sorted.restOf.length; f++) {
      for (int a = sorted.restFrom[f]; a < sorted.restFrom[f + 1]; a++) {
        addRow(squares, sorted.elimination.rest().get(f), inverse.rest[a], a);
      }
    }
    for (int d = 0; d < sorted.elimination.chain().size(); d++) {
      int k = sorted.elimination.chain().get(d);
      for (int e = d + 1; e < sorted.depths; e++) {
        addBoth(
            squares,
            k,
            sorted.elimination.chain().get(e),
            Vectors.dot(inverse.above[d][e], inverse.above[d][e]));
      }
      if (d > 0) {
        double[][] chain = new double[evidence.varying()][evidence.varying()];
        for (double[] row : inverse.rows[d - 1]) {
          addRow(chain, k, row, -1);
        }
        for (int l = 0; l < chain.length; l++) {
          addBoth(squares, k, l, chain[k][l]);
        }
      } else {
        addMet(squares, k);
      }
    }
    return squares;
  }

  private static void addBoth(double[][] squares, int k, int l, double sum) {
    squares[k][l] += sum;
    squares[l][k] += sum;
  }

  private void addRow(double[][] squares, int k, double[] row, int skip) {
    for (int g = 0; g < sorted.restOf.length; g++) {
      double sum = 0;
      for (int b = sorted.restFrom[g]; b < sorted.restFrom[g + 1]; b++) {
        sum += b == skip ? 0 : row[b] * row[b];
      }
      squares[k][sorted.elimination.rest().get(g)] += sum;
    }
  }

  private void addMet(double[][] squares, int k) {
    for (int at = 0; at < sorted.met.length; at++) {
      int f = 0;
      while (sorted.met[at] >= sorted.restFrom[f + 1]) {
        f++;
      }
      addBoth(squares, k, sorted.elimination.rest().get(f), inverse.met[at] * inverse.met[at]);
    }
  }
}
