package org.taketally.plan.layout;

import java.util.Arrays;
import java.util.List;

/**
 * How well each pair of treatments is compared inside blocks, against complete blocks with the same
 * replicates.
 *
 * <pre>
 *   C   information inside blocks (see {@link BlockEfficiency})      G = (C + J)^-1, J all ones
 *   v_ij = G_ii + G_jj - 2 G_ij      e_ij = (1/r_i + 1/r_j) / v_ij
 * </pre>
 *
 * @param average mean variance of complete blocks over mean variance of these, 0 to 1
 * @param worst smallest e_ij, 0 to 1; 0 if some pair never meets, not even through others
 * @see "John and Williams (1995), Cyclic and Computer Generated Designs, chapter 2"
 */
public record PairEfficiency(double average, double worst) {

  /** Below this a pivot is zero: some treatments never meet. */
  private static final double ZERO = 1e-9;

  /**
   * Of blocks given by treatment numbers.
   *
   * @param blocks for each block its treatments, 0 to {@code treatments} - 1
   * @param treatments 2 or more, each in some block
   * @return the efficiency
   */
  static PairEfficiency of(int[][] blocks, int treatments) {
    double[] replicates = new double[treatments];
    double[][] matrix = information(blocks, replicates);
    for (double[] row : matrix) {
      for (int j = 0; j < treatments; j++) {
        row[j] += 1;
      }
    }
    return invert(matrix) ? of(matrix, replicates) : new PairEfficiency(0, 0);
  }

  private static PairEfficiency of(double[][] inverse, double[] replicates) {
    double worst = Double.POSITIVE_INFINITY;
    double complete = 0;
    double these = 0;
    for (int i = 1; i < replicates.length; i++) {
      for (int j = 0; j < i; j++) {
        double v = inverse[i][i] + inverse[j][j] - 2 * inverse[i][j];
        double best = 1 / replicates[i] + 1 / replicates[j];
        worst = Math.min(worst, best / v);
        complete += best;
        these += v;
      }
    }
    return new PairEfficiency(Math.min(1, complete / these), Math.min(1, worst));
  }

  private static double[][] information(int[][] blocks, double[] replicates) {
    double[][] information = new double[replicates.length][replicates.length];
    for (int[] block : blocks) {
      for (int one : block) {
        replicates[one]++;
        information[one][one]++;
        for (int other : block) {
          information[one][other] -= 1.0 / block.length;
        }
      }
    }
    return information;
  }

  /** Gauss-Jordan in place on a symmetric positive definite matrix; false if it is singular. */
  private static boolean invert(double[][] a) {
    int n = a.length;
    for (int k = 0; k < n; k++) {
      double pivot = a[k][k];
      if (!(pivot > ZERO)) {
        return false;
      }
      a[k][k] = 1;
      for (int j = 0; j < n; j++) {
        a[k][j] /= pivot;
      }
      for (int i = 0; i < n; i++) {
        double factor = a[i][k];
        if (i != k && factor != 0) {
          a[i][k] = 0;
          for (int j = 0; j < n; j++) {
            a[i][j] -= factor * a[k][j];
          }
        }
      }
    }
    return true;
  }

  /** Better in the worst pair, or as good there and better on average. */
  boolean betterThan(PairEfficiency other) {
    return worst > other.worst + ZERO
        || (worst > other.worst - ZERO && average > other.average + ZERO);
  }

  /**
   * Of blocks given by names.
   *
   * @param blocks for each block the treatments in it, one name a plot; at least two names in all
   * @return the efficiency
   */
  public static PairEfficiency of(List<List<String>> blocks) {
    String[] names =
        blocks.stream().flatMap(List::stream).distinct().sorted().toArray(String[]::new);
    if (names.length < 2) {
      throw new IllegalArgumentException(
          "a layout compares at least two treatments, got %s".formatted(Arrays.toString(names)));
    }
    return of(
        blocks.stream()
            .map(block -> block.stream().mapToInt(n -> Arrays.binarySearch(names, n)).toArray())
            .toArray(int[][]::new),
        names.length);
  }
}
