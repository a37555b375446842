package org.taketally.plan.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Plural;

/** In every session one bed or tray of each stock, in each bed every cultivar. */
final class SplitPlot {

  private SplitPlot() {}

  static List<Plot> plots(LayoutPlan plan) {
    int sessions = plan.sessions().size();
    if (plan.rootstocks().size() < 2 || sessions < 2) {
      throw new IllegalArgumentException(
          "stocks by the bed need two rootstocks or more and two sessions or more, got %d and %d: one bed of each stock can't tell the stock from the bed"
              .formatted(plan.rootstocks().size(), sessions));
    }
    int pairings = plan.pairings().size();
    if (plan.room() < pairings) {
      throw new IllegalArgumentException(
          "stocks by the bed take %d plots a session (%s in a bed of each of %d stocks), but a session may hold %d; allow %d plots a session, leave out cultivars or stocks, or use blocks"
              .formatted(
                  pairings,
                  Plural.of(plan.cultivars().size(), RecordColumn.CULTIVAR.columnName()),
                  plan.rootstocks().size(),
                  plan.room(),
                  pairings));
    }
    int[] counts = Replicates.of(plan, pairings * sessions);
    if (Arrays.stream(counts).anyMatch(count -> count < sessions)) {
      throw new IllegalArgumentException(
          "every bed holds every cultivar, so %d grafts of each pairing are needed, more than are on hand of some; use fewer grafts a plot or fewer sessions"
              .formatted(sessions * plan.graftsPerPlot()));
    }
    return inOrder(plan);
  }

  private static List<Plot> inOrder(LayoutPlan plan) {
    Random random = new Random(plan.seed());
    List<Plot> plots = new ArrayList<>();
    List<Session> sessions = plan.sessions();
    int bed = 0;
    for (int b = 0; b < sessions.size(); b++) {
      for (int stock :
          RandomOrder.of(IntStream.range(0, plan.rootstocks().size()).toArray(), random)) {
        bed++;
        for (int cultivar :
            RandomOrder.of(IntStream.range(0, plan.cultivars().size()).toArray(), random)) {
          plots.add(
              new Plot(
                  plots.size() + 1,
                  sessions.get(b),
                  String.valueOf(b + 1),
                  Optional.of("bed " + bed),
                  new Pairing(plan.cultivars().get(cultivar), plan.rootstocks().get(stock)),
                  plan.graftsPerPlot()));
        }
      }
    }
    return plots;
  }
}
