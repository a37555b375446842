package org.taketally.model;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Provenance;

/**
 * Seeded small sets of records as growers keep them: a few cultivars on a few stocks, worked by a
 * few hands, unevenly, with gaps, in cells of 1 to 12 grafts.
 */
final class SmallLayouts {

  private SmallLayouts() {}

  /**
   * One set.
   *
   * @param seed the same seed gives the same set
   * @return 6 to 40 cells with cultivar, rootstock, grafter, pairing and storage_days
   */
  static Cells of(long seed) {
    SplittableRandom random = new SplittableRandom(seed * 7_919 + 17);
    int[] sizes = {2 + random.nextInt(8), 2 + random.nextInt(4), 2 + random.nextInt(4)};
    int rows = 6 + random.nextInt(35);
    int most = 1 + random.nextInt(12);
    double[][] deviations = new double[3][];
    for (int k = 0; k < 3; k++) {
      double sd = random.nextInt(3) * 0.5;
      deviations[k] = random.doubles(sizes[k]).map(d -> sd * (2 * d - 1) * 1.7).toArray();
    }
    double pairingSd = random.nextInt(3) * 0.4;
    double[] pairings = new double[sizes[0] * sizes[1]];
    for (int p = 0; p < pairings.length; p++) {
      pairings[p] = pairingSd * random.nextGaussian();
    }
    double level = 2 * random.nextDouble() - 1;
    double slope = -0.1 * random.nextInt(2);
    int[][] codes = new int[3][rows];
    double[] days = new double[rows];
    int[] grafts = new int[rows];
    int[] takes = new int[rows];
    for (int i = 0; i < rows; i++) {
      double eta = level;
      for (int k = 0; k < 3; k++) {
        codes[k][i] = random.nextInt(sizes[k]);
        eta += deviations[k][codes[k][i]];
      }
      eta += pairings[codes[0][i] * sizes[1] + codes[1][i]];
      days[i] = random.nextInt(10);
      eta += slope * (days[i] - 5);
      grafts[i] = 1 + random.nextInt(most);
      for (int n = 0; n < grafts[i]; n++) {
        takes[i] += random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
      }
    }
    List<Factor> factors = new ArrayList<>();
    String[] names = {"cultivar", "rootstock", "grafter"};
    for (int k = 0; k < 3; k++) {
      String name = names[k];
      List<String> levels =
          IntStream.rangeClosed(1, sizes[k]).mapToObj(j -> name.substring(0, 1) + j).toList();
      factors.add(new Factor(name, levels, codes[k]));
    }
    return new Cells(
        factors,
        List.of(new Measure("storage_days", days)),
        grafts,
        takes,
        0,
        Provenance.of("simulated", rows));
  }
}
