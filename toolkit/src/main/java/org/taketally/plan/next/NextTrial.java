package org.taketally.plan.next;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.size.VerdictChances;

/**
 * What to graft next.
 *
 * @param now the verdict the records give as they are
 * @param state what is to be done about it
 * @param open pairs of rootstocks that aren't settled, widest first; for entangled ones, pairs that
 *     would link groups never compared
 * @param layout the grafts to add; empty if nothing needs to be added
 * @param reckoned chance that the grafts settle it, by the widths of ranges alone, 0 to 1; empty if
 *     nothing needs to be added or the stocks were never compared
 * @param wanted chance wanted that the grafts settle it, above 0 and below 1
 * @param after the chance of each verdict with the grafts added to the records, made up and judged
 *     by the same rules; empty if nothing needs to be added or none were made up
 */
public record NextTrial(
    FactorVerdict now,
    State state,
    List<OpenPair> open,
    Optional<TrialLayout> layout,
    OptionalDouble reckoned,
    double wanted,
    Optional<VerdictChances> after) {

  private static final double HALF = 0.5;

  public NextTrial {
    open = List.copyOf(open);
  }

  /**
   * Whether the grafts settle it less often than wanted, by more than the made-up ones may be off.
   *
   * @return false where none were made up
   */
  public boolean fallsShort() {
    return after.filter(chances -> fallsShort(chances, wanted)).isPresent();
  }

  static boolean fallsShort(VerdictChances after, double wanted) {
    return after.settled() + after.uncertainty(after.settled()) < wanted;
  }

  /** Less often than wanted, and less often than not. */
  static boolean outOfReach(VerdictChances after, double wanted) {
    return fallsShort(after, wanted) && after.settled() < HALF;
  }

  /**
   * Whether the made-up grafts settle it less often than wanted, but by no more than they may be
   * off.
   *
   * @return false where none were made up
   */
  public boolean perhapsShort() {
    return !fallsShort() && after.filter(chances -> chances.settled() < wanted).isPresent();
  }

  /** What is to be done. */
  public enum State {
    /** The verdict stands: nothing needs to be added. */
    SETTLED,
    /** Grafts of the open pairs would settle it as often as wanted, or more often than not. */
    MORE_GRAFTS,
    /** Even the most grafts there may be would probably not settle it, nor as often as wanted. */
    OUT_OF_REACH,
    /** Groups of stocks were never compared: bridging grafts come first. */
    BRIDGE
  }

  /**
   * Two rootstocks of which it isn't known which takes better, and whether it matters.
   *
   * @param rootstock one
   * @param other the other
   */
  public record OpenPair(String rootstock, String other) {}
}
