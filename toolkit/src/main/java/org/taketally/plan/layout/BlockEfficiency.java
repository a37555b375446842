package org.taketally.plan.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * How much of what a layout could tell about its treatments is left inside its blocks.
 *
 * <pre>
 *   N   how often each treatment stands in each block     r, k   replicates, block sizes
 *   C = diag(r) - N diag(1/k) N'      scaled: r^-1/2 C r^-1/2
 *   canonical efficiencies: its eigenvalues, but for the one zero of the mean
 *   efficiency: their harmonic mean, 1 if every block holds every treatment alike
 * </pre>
 *
 * @param efficiency harmonic mean of the canonical efficiencies, 0 to 1; 0 if some treatments never
 *     meet, not even through others
 * @param worst the smallest canonical efficiency: the comparison that suffers most
 * @see "John and Williams (1995), Cyclic and Computer Generated Designs, chapters 1 and 2"
 */
public record BlockEfficiency(double efficiency, double worst) {

  private static final double ZERO = 1e-9;

  /**
   * The efficiency of a layout.
   *
   * @param blocks for each block the treatments in it, each by name, one per plot; at least two
   *     treatments in all
   * @return the efficiency
   * @throws IllegalArgumentException with fewer than two treatments
   */
  public static BlockEfficiency of(List<List<String>> blocks) {
    Map<String, Integer> places = places(blocks);
    if (places.size() < 2) {
      throw new IllegalArgumentException(
          "a layout compares at least two treatments, got %s".formatted(places.keySet()));
    }
    double[] canonical = canonical(scaledInformation(blocks, places));
    double worst = canonical[0];
    if (worst < ZERO) {
      return new BlockEfficiency(0, 0);
    }
    double inverses = Arrays.stream(canonical).map(value -> 1 / value).sum();
    return new BlockEfficiency(canonical.length / inverses, worst);
  }

  private static Map<String, Integer> places(List<List<String>> blocks) {
    Map<String, Integer> places = new TreeMap<>();
    List<String> names =
        new ArrayList<>(new TreeSet<>(blocks.stream().flatMap(List::stream).toList()));
    for (int i = 0; i < names.size(); i++) {
      places.put(names.get(i), i);
    }
    return places;
  }

  private static double[][] scaledInformation(
      List<List<String>> blocks, Map<String, Integer> places) {
    double[][] information = new double[places.size()][places.size()];
    double[] replicates = new double[places.size()];
    for (List<String> block : blocks) {
      for (String one : block) {
        int i = places.get(one);
        replicates[i]++;
        information[i][i]++;
        for (String other : block) {
          information[i][places.get(other)] -= 1.0 / block.size();
        }
      }
    }
    for (int i = 0; i < replicates.length; i++) {
      for (int j = 0; j < replicates.length; j++) {
        information[i][j] /= Math.sqrt(replicates[i] * replicates[j]);
      }
    }
    return information;
  }

  /** Eigenvalues in rising order without the zero of the mean. */
  private static double[] canonical(double[][] information) {
    double[] values =
        new EigenDecomposition(new Array2DRowRealMatrix(information, false)).getRealEigenvalues();
    Arrays.sort(values);
    return Arrays.copyOfRange(values, 1, values.length);
  }

  /**
   * The efficiency of a balanced incomplete block design, where it exists: every pair of treatments
   * meets equally often.
   *
   * @param treatments t, at least 2
   * @param plotsPerBlock k, at least 2, at most t
   * @return t (k - 1) / (k (t - 1)), 0 to 1
   */
  public static double ifBalanced(int treatments, int plotsPerBlock) {
    requireSizes(treatments, plotsPerBlock);
    return (double) treatments * (plotsPerBlock - 1) / ((double) plotsPerBlock * (treatments - 1));
  }

  /**
   * The most a resolvable design of equal blocks can reach.
   *
   * @param treatments t = s * k, at least 2
   * @param replicates r, at least 2
   * @param plotsPerBlock k, at least 2, dividing t
   * @return (t - 1)(r - 1) / ((t - 1)(r - 1) + r (s - 1)), 0 to 1
   * @see "Patterson and Williams (1976), Biometrika 63, 83-92"
   */
  public static double mostIfResolvable(int treatments, int replicates, int plotsPerBlock) {
    requireSizes(treatments, plotsPerBlock);
    if (replicates < 2 || treatments % plotsPerBlock != 0) {
      throw new IllegalArgumentException(
          "a resolvable design needs 2 replicates or more and blocks that divide the treatments, "
              + "got %d replicates, %d treatments in blocks of %d"
                  .formatted(replicates, treatments, plotsPerBlock));
    }
    double s = (double) treatments / plotsPerBlock;
    double rest = (treatments - 1.0) * (replicates - 1.0);
    return rest / (rest + replicates * (s - 1));
  }

  private static void requireSizes(int treatments, int plotsPerBlock) {
    if (treatments < 2 || plotsPerBlock < 2 || plotsPerBlock > treatments) {
      throw new IllegalArgumentException(
          "blocks hold 2 to %d (treatments) plots, got %d".formatted(treatments, plotsPerBlock));
    }
  }
}
