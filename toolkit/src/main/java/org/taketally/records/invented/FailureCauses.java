package org.taketally.records.invented;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.invented.GraftRow.Graft;

/** What a grafter writes down as the reason of a failure: a guess, and not always made. */
final class FailureCauses {

  private final Scenario.Traps traps;
  private final Draw draw;

  FailureCauses(Scenario.Traps traps, Draw draw) {
    this.traps = traps;
    this.draw = draw;
  }

  /** The cause of a single graft that failed; empty for takes and batches. */
  String of(Session session, boolean weak, List<Graft> grafts) {
    if (grafts.size() != 1 || grafts.get(0).countedAlive(3)) {
      return "";
    }
    boolean early = grafts.get(0).lastAlive() == 0;
    Map<String, Double> weights = new LinkedHashMap<>();
    weights.put("dried-scion", early ? 4.0 : 2.0);
    weights.put("no-callus", early ? 2.5 : 0.0);
    weights.put("rot", early ? 1.5 : 0.5);
    weights.put("stalled", early ? 0.0 : 4.0);
    weights.put("broken", early ? 0.2 : 1.0);
    weights.put("stock-died", weak ? 3.0 : 0.3);
    weights.put("heat", traps.hot(session.date()) ? 5.0 : 0.0);
    weights.put("unknown", 2.0);
    return draw.weighted(weights);
  }
}
