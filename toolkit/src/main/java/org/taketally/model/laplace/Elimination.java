package org.taketally.model.laplace;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The order in which levels are eliminated from H.
 *
 * <p>A chain of nested columns comes first, finest level first (pairing in cultivar): each level
 * touches one level of every coarser link, so all links stay diagonal. The others form a dense
 * remainder. Among all chains the one with most levels is taken, so that the remainder is smallest.
 *
 * @param chain places of the columns in the chain, finest first
 * @param rest places of the other columns, largest first
 */
public record Elimination(List<Integer> chain, List<Integer> rest) {

  public static Elimination of(ModelData evidence) {
    int count = evidence.varying();
    boolean[][] within = new boolean[count][count];
    for (int k = 0; k < count; k++) {
      for (int l = 0; l < count; l++) {
        within[k][l] =
            k != l
                && (evidence.sizes()[k] > evidence.sizes()[l]
                    || (evidence.sizes()[k] == evidence.sizes()[l] && k < l))
                && nested(evidence, k, l);
      }
    }
    List<Integer> best = List.of();
    for (int k = 0; k < count; k++) {
      List<Integer> chain = longest(k, within, evidence.sizes());
      if (!anyExempt(evidence, best)
          && (anyExempt(evidence, chain)
              || levels(chain, evidence.sizes()) > levels(best, evidence.sizes()))) {
        best = chain;
      }
    }
    List<Integer> chosen = best;
    List<Integer> rest =
        IntStream.range(0, count)
            .filter(k -> !chosen.contains(k))
            .boxed()
            .sorted(Comparator.comparingInt((Integer k) -> -evidence.sizes()[k]))
            .toList();
    return new Elimination(best, rest);
  }

  /** Cells without a deviation can be told by the finest link only. */
  private static boolean anyExempt(ModelData evidence, List<Integer> chain) {
    return !chain.isEmpty() && evidence.exempt()[chain.get(0)] != ModelData.NONE;
  }

  private static List<Integer> longest(int finest, boolean[][] within, int[] sizes) {
    List<Integer> best = List.of();
    for (int l = 0; l < sizes.length; l++) {
      if (within[finest][l]) {
        List<Integer> chain = longest(l, within, sizes);
        if (levels(chain, sizes) > levels(best, sizes)) {
          best = chain;
        }
      }
    }
    List<Integer> chain = new ArrayList<>(List.of(finest));
    chain.addAll(best);
    return chain;
  }

  private static long levels(List<Integer> chain, int[] sizes) {
    return chain.stream().mapToLong(k -> sizes[k]).sum();
  }

  /** Whether every level of the finer column lies in one level of the coarser. */
  private static boolean nested(ModelData evidence, int k, int l) {
    int[] finer = evidence.codes()[k];
    int[] coarser = evidence.codes()[l];
    if (evidence.exempt()[l] != ModelData.NONE) {
      return false;
    }
    int[] parent = new int[evidence.sizes()[k]];
    for (int i = 0; i < finer.length; i++) {
      if (finer[i] == evidence.exempt()[k]) {
        continue;
      }
      int known = parent[finer[i]];
      if (known == 0) {
        parent[finer[i]] = coarser[i] + 1;
      } else if (known != coarser[i] + 1) {
        return false;
      }
    }
    return true;
  }
}
