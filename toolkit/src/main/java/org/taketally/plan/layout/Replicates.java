package org.taketally.plan.layout;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.taketally.terms.Plural;

/** How many plots each pairing gets, as evenly as room and supplies allow. */
final class Replicates {

  private final LayoutPlan plan;
  private final int mostOfEach;
  private final Map<String, Integer> stocks = new HashMap<>();
  private final Map<String, Integer> wood = new HashMap<>();

  private Replicates(LayoutPlan plan, int mostOfEach) {
    this.plan = plan;
    this.mostOfEach = mostOfEach;
    stocks.putAll(plan.stocksOnHand());
    wood.putAll(plan.woodOnHand());
  }

  /** Plots of each of the plan's pairings; at most one a session, at most {@code plots} in all. */
  static int[] of(LayoutPlan plan, int plots) {
    return of(plan, plots, plan.sessions().size());
  }

  /** As above, but at most so many plots a pairing. */
  static int[] of(LayoutPlan plan, int plots, int mostOfEach) {
    return new Replicates(plan, mostOfEach).share(plots);
  }

  private int[] share(int plots) {
    List<Pairing> pairings = plan.pairings();
    int[] counts = new int[pairings.size()];
    boolean[] used = new boolean[counts.length];
    for (int plot = 0; plot < plots; plot++) {
      int next = fewest(counts, used, pairings);
      if (next < 0) {
        break;
      }
      counts[next]++;
      take(stocks, pairings.get(next).rootstock());
      take(wood, pairings.get(next).cultivar());
    }
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] == 0) {
        throw noPlot(pairings.get(i), plots);
      }
    }
    return counts;
  }

  private IllegalArgumentException noPlot(Pairing pairing, int plots) {
    Optional<String> scarce =
        Stream.of(pairing.rootstock(), pairing.cultivar())
            .filter(
                name ->
                    plan.stocksOnHand().containsKey(name) || plan.woodOnHand().containsKey(name))
            .findFirst();
    if (scarce.isEmpty()) {
      return new IllegalArgumentException(
          "%s gets no plot: room is for %s of %s; add days or grafters, or leave pairings out"
              .formatted(
                  pairing, Plural.of(plots, "plot"), Plural.of(plan.graftsPerPlot(), "graft")));
    }
    String name = scarce.get();
    return new IllegalArgumentException(
        "%s gets no plot: room is for %s of %s; there is enough of %s for %s: leave it out, or use fewer grafts a plot"
            .formatted(
                pairing,
                Plural.of(plots, "plot"),
                Plural.of(plan.graftsPerPlot(), "graft"),
                name,
                Plural.of(
                    plan.stocksOnHand().getOrDefault(name, plan.woodOnHand().getOrDefault(name, 0)),
                    "graft")));
  }

  private int fewest(int[] counts, boolean[] full, List<Pairing> pairings) {
    int best = -1;
    for (int i = 0; i < counts.length; i++) {
      Pairing pairing = pairings.get(i);
      full[i] |=
          counts[i] >= mostOfEach
              || left(stocks, pairing.rootstock()) < plan.graftsPerPlot()
              || left(wood, pairing.cultivar()) < plan.graftsPerPlot();
      if (!full[i] && (best < 0 || better(counts, i, best, pairings))) {
        best = i;
      }
    }
    return best;
  }

  /** Fewest plots first; then the pairing whose stock and cultivar have had fewest. */
  private static boolean better(int[] counts, int i, int best, List<Pairing> pairings) {
    if (counts[i] != counts[best]) {
      return counts[i] < counts[best];
    }
    return had(counts, i, pairings) < had(counts, best, pairings);
  }

  private static int had(int[] counts, int i, List<Pairing> pairings) {
    int sum = 0;
    for (int j = 0; j < counts.length; j++) {
      boolean stock = pairings.get(j).rootstock().equals(pairings.get(i).rootstock());
      boolean cultivar = pairings.get(j).cultivar().equals(pairings.get(i).cultivar());
      sum += counts[j] * ((stock ? 1 : 0) + (cultivar ? 1 : 0));
    }
    return sum;
  }

  private static int left(Map<String, Integer> supplies, String name) {
    return supplies.getOrDefault(name, Integer.MAX_VALUE);
  }

  private void take(Map<String, Integer> supplies, String name) {
    supplies.computeIfPresent(name, (same, left) -> left - plan.graftsPerPlot());
  }
}
