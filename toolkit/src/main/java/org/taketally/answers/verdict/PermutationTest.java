package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/**
 * A second opinion that supposes little: within groups of grafts made together (the same day, hand,
 * cultivar, ...) the levels of the compared column are dealt out anew among the cells, again and
 * again, and what is seen is set beside what dealing gives. It supposes only that levels could as
 * well have been dealt the other way round within a group.
 *
 * <pre>
 *   s          stratum: cells alike in every group column
 *   n_i, y_i   grafts and takes of a cell,  p_s = sum[y] / sum[n] in its stratum
 *   D_k        sum over cells of level k of (y_i - n_i p_s)
 *   N_k        grafts of level k in strata that hold two levels or more
 *   T          sum over levels of D_k^2 / N_k, larger the more levels differ
 * </pre>
 *
 * <p>Cells are dealt among cells of as many grafts, so a row of 20 grafts that share their luck is
 * one thing to deal, not 20; rows of sizes of their own can't be dealt. Dealing stops early when
 * the answer is plain (Besag and Clifford 1991, Biometrika 78, 301-304).
 *
 * @param pValue how often dealing gives at least what is seen, 0 to 1
 * @param statistic T
 * @param deals how often levels were dealt
 * @param within columns the grafts of a group are alike in
 * @param grafts grafts in groups in which levels could be dealt, of rows that can be dealt
 */
public record PermutationTest(
    double pValue, double statistic, int deals, List<String> within, long grafts) {

  /** Deals that give as much as is seen after which more deals would change little. */
  private static final int ENOUGH = 20;

  private static final int MOST_DEALS = 1999;

  /** Share of the grafts that must lie in groups in which levels can be dealt. */
  private static final double SHARE = 0.25;

  public PermutationTest {
    within = List.copyOf(within);
  }

  /**
   * Tests whether levels differ.
   *
   * @param cells the records
   * @param compared column of levels
   * @param groups columns to deal within, the most important first; later ones are left out where
   *     groups would become so fine that there is nothing to deal
   * @param seed the same seed deals the same
   * @return the test; empty if levels never met within groups
   */
  static Optional<PermutationTest> of(
      Cells cells, String compared, List<String> groups, long seed) {
    Factor levels = cells.factor(compared);
    List<String> within = new ArrayList<>();
    int[] stratum = new int[cells.size()];
    for (String group : groups) {
      int[] finer = crossed(stratum, cells.factor(group).codes());
      if (within.isEmpty() || movable(cells, levels, finer) >= SHARE * cells.graftsTotal()) {
        stratum = finer;
        within.add(group);
      }
    }
    long grafts = movable(cells, levels, stratum);
    return grafts < SHARE * cells.graftsTotal()
        ? Optional.empty()
        : Optional.of(new Dealing(cells, levels, stratum).test(within, grafts, seed));
  }

  /** Whether all rows were single grafts, so that grafts can be dealt one by one. */
  private static boolean single(Cells cells) {
    return cells.logCoefficients() == 0;
  }

  private static int[] crossed(int[] one, int[] other) {
    TreeMap<Long, Integer> known = new TreeMap<>();
    int[] both = new int[one.length];
    for (int i = 0; i < both.length; i++) {
      both[i] = known.computeIfAbsent(((long) one[i] << 32) + other[i] + 1, k -> known.size());
    }
    return both;
  }

  /** Grafts that lie in strata, among cells that can be dealt for each other, of two levels. */
  private static long movable(Cells cells, Factor levels, int[] strata) {
    int[] stratum = single(cells) ? strata : crossed(strata, cells.grafts());
    int[] first = new int[cells.size()];
    Arrays.fill(first, -1);
    boolean[] mixed = new boolean[cells.size()];
    for (int i = 0; i < stratum.length; i++) {
      int level = levels.code(i);
      if (level != Factor.MISSING) {
        int s = stratum[i];
        mixed[s] |= first[s] >= 0 && first[s] != level;
        first[s] = level;
      }
    }
    long grafts = 0;
    for (int i = 0; i < stratum.length; i++) {
      grafts += mixed[stratum[i]] && levels.code(i) != Factor.MISSING ? cells.grafts(i) : 0;
    }
    return grafts;
  }

  /** Things that can be dealt: single grafts where rows were single grafts, else whole cells. */
  private static final class Dealing {
    private final int size;
    private final List<Integer> levels = new ArrayList<>();
    private final List<Double> surpluses = new ArrayList<>();
    private final List<Integer> weights = new ArrayList<>();
    private final int[] level;
    private final double[] surplus;
    private final int[] weight;
    private final List<int[]> exchangeable;

    Dealing(Cells cells, Factor factor, int[] stratum) {
      this.size = factor.size();
      double[] share = shares(cells, factor, stratum);
      boolean single = single(cells);
      TreeMap<Long, List<Integer>> alike = new TreeMap<>();
      for (int i = 0; i < stratum.length; i++) {
        int code = factor.code(i);
        if (code != Factor.MISSING) {
          int n = cells.grafts(i);
          List<Integer> places =
              alike.computeIfAbsent(
                  ((long) stratum[i] << 32) + (single ? 1 : n), k -> new ArrayList<>());
          for (int g = 0; g < (single ? n : 1); g++) {
            places.add(levels.size());
            levels.add(code);
            weights.add(single ? 1 : n);
            double takes = single ? (g < cells.takes(i) ? 1 : 0) : cells.takes(i);
            surpluses.add(takes - (single ? 1 : n) * share[stratum[i]]);
          }
        }
      }
      level = levels.stream().mapToInt(Integer::intValue).toArray();
      surplus = surpluses.stream().mapToDouble(Double::doubleValue).toArray();
      weight = weights.stream().mapToInt(Integer::intValue).toArray();
      exchangeable =
          alike.values().stream()
              .filter(places -> places.size() > 1)
              .map(places -> places.stream().mapToInt(Integer::intValue).toArray())
              .toList();
    }

    private static double[] shares(Cells cells, Factor factor, int[] stratum) {
      double[] takes = new double[stratum.length];
      double[] grafts = new double[stratum.length];
      for (int i = 0; i < stratum.length; i++) {
        if (factor.code(i) != Factor.MISSING) {
          takes[stratum[i]] += cells.takes(i);
          grafts[stratum[i]] += cells.grafts(i);
        }
      }
      Arrays.setAll(takes, s -> grafts[s] == 0 ? 0 : takes[s] / grafts[s]);
      return takes;
    }

    PermutationTest test(List<String> within, long grafts, long seed) {
      double seen = statistic();
      SplittableRandom random = new SplittableRandom(seed);
      int asMuch = 0;
      int deals = 0;
      while (deals < MOST_DEALS && asMuch < ENOUGH) {
        exchangeable.forEach(places -> shuffle(places, random));
        deals++;
        asMuch += statistic() >= seen - 1e-9 ? 1 : 0;
      }
      double pValue = asMuch >= ENOUGH ? (double) asMuch / deals : (asMuch + 1.0) / (deals + 1.0);
      return new PermutationTest(pValue, seen, deals, within, grafts);
    }

    private double statistic() {
      double[] sum = new double[size];
      double[] grafts = new double[size];
      for (int i = 0; i < level.length; i++) {
        sum[level[i]] += surplus[i];
        grafts[level[i]] += weight[i];
      }
      double total = 0;
      for (int k = 0; k < size; k++) {
        total += grafts[k] > 0 ? sum[k] * sum[k] / grafts[k] : 0;
      }
      return total;
    }

    private void shuffle(int[] places, SplittableRandom random) {
      for (int i = places.length - 1; i > 0; i--) {
        int j = random.nextInt(i + 1);
        int kept = level[places[i]];
        level[places[i]] = level[places[j]];
        level[places[j]] = kept;
      }
    }
  }
}
