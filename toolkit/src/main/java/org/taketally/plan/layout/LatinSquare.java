package org.taketally.plan.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.taketally.terms.Plural;

/** Rows are grafters, columns days; each pairing stands once in each. */
final class LatinSquare {

  private LatinSquare() {}

  static List<Plot> plots(LayoutPlan plan) {
    int t = plan.pairings().size();
    if (plan.grafters().size() != t || plan.days().size() != t) {
      throw new IllegalArgumentException(
          "a Latin square of %d pairings needs %d grafters and %d days, got %d and %d; blocks do with any number"
              .formatted(t, t, t, plan.grafters().size(), plan.days().size()));
    }
    requireSupplies(plan, t);
    int[][] square = square(t, new Random(plan.seed()));
    List<Plot> plots = new ArrayList<>();
    for (int day = 0; day < t; day++) {
      for (int grafter = 0; grafter < t; grafter++) {
        plots.add(
            new Plot(
                plots.size() + 1,
                new Session(plan.grafters().get(grafter), plan.days().get(day)),
                String.valueOf(day * t + grafter + 1),
                Optional.empty(),
                plan.pairings().get(square[grafter][day]),
                plan.graftsPerPlot()));
      }
    }
    return plots;
  }

  private static void requireSupplies(LayoutPlan plan, int plotsEach) {
    int[] counts = Replicates.of(plan, plotsEach * plan.pairings().size(), plotsEach);
    if (IntStream.of(counts).anyMatch(count -> count < plotsEach)) {
      throw new IllegalArgumentException(
          "a Latin square needs %s of every pairing, more than are on hand of some; use fewer grafts a plot, or blocks"
              .formatted(Plural.of((long) plotsEach * plan.graftsPerPlot(), "graft")));
    }
  }

  /**
   * The cyclic square with rows, columns and letters in random order.
   *
   * @see "Fisher and Yates (1934), Proceedings of the Cambridge Philosophical Society 30, 492-507"
   */
  static int[][] square(int t, Random random) {
    int[] rows = RandomOrder.of(IntStream.range(0, t).toArray(), random);
    int[] columns = RandomOrder.of(IntStream.range(0, t).toArray(), random);
    int[] letters = RandomOrder.of(IntStream.range(0, t).toArray(), random);
    int[][] square = new int[t][t];
    for (int i = 0; i < t; i++) {
      for (int j = 0; j < t; j++) {
        square[rows[i]][columns[j]] = letters[(i + j) % t];
      }
    }
    return square;
  }
}
