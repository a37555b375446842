package org.taketally.records.invented;

import java.time.LocalDate;
import java.util.List;

/**
 * One row of a sheet: one graft, or several alike that were counted together.
 *
 * @param record name of the row
 * @param wood the budwood
 * @param rootstock the stock
 * @param condition healthy or weak
 * @param grafts one entry per graft
 * @param looks dates of the three counts
 * @param labelLost whether nobody could tell in the end which graft it was
 * @param failureCause what the grafter thought, or empty
 */
record GraftRow(
    String record,
    CutWood wood,
    String rootstock,
    String condition,
    List<Graft> grafts,
    List<LocalDate> looks,
    boolean labelLost,
    String failureCause) {

  /**
   * One graft.
   *
   * @param scionMm scion diameter
   * @param stockMm stock diameter
   * @param cambium how the cambium was matched
   * @param lastAlive last count at which it was alive, 0 to 3
   * @param firstSeen first count at which it had visibly moved, 1 to 3
   */
  record Graft(double scionMm, double stockMm, String cambium, int lastAlive, int firstSeen) {

    boolean countedAlive(int look) {
      return look >= firstSeen && look <= lastAlive;
    }
  }

  /** Grafts counted alive at a count, 1 to 3. */
  int alive(int look) {
    return (int) grafts.stream().filter(graft -> graft.countedAlive(look)).count();
  }

  /** Takes at the last count. */
  int takes() {
    return alive(looks.size());
  }
}
