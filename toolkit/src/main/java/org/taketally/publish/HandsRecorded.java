package org.taketally.publish;

import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeFit;
import org.taketally.publish.privacy.GraftsByMember;
import org.taketally.records.GraftRecords;

/** Whether what a hand did can be told from what it used. */
final class HandsRecorded {

  /** Share of the grafts that must name their grafter. Common practice, no source. */
  private static final double MOST = 0.8;

  private HandsRecorded() {}

  /**
   * Whether most grafts name their grafter, and the fit allows for it if there is more than one.
   */
  static boolean in(GraftRecords records, TakeFit fit) {
    if (!records.frame().columnNames().contains(SeasonFacts.GRAFTER)) {
      return false;
    }
    Cells cells = CellsOf.records(records, List.of(SeasonFacts.GRAFTER));
    GraftsByMember evidence = new GraftsByMember(cells, SeasonFacts.GRAFTER);
    double named = 1 - (double) evidence.unnamedGrafts() / Math.max(1, cells.graftsTotal());
    boolean allowedFor = fit.model().columns().contains(SeasonFacts.GRAFTER);
    return named >= MOST && (allowedFor || evidence.members(evidence.all()) == 1);
  }
}
