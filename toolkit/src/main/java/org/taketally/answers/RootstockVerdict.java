package org.taketally.answers;

import java.util.Optional;
import org.taketally.terms.Interval;

/**
 * Does the rootstock matter? The verdict on the stock's type, and beside it everything a grower
 * would ask next.
 *
 * @param type verdict on the compared column, usually {@code rootstock}
 * @param condition the same for {@code stock_condition}; empty if the records lack it
 * @param pairings cultivars that fail on one stock alone; empty if it can't be estimated
 * @param byHand the view of two rootstocks that can be followed by hand; empty unless there are
 *     two, or one stands out
 * @param offType what seedlings not true to type would do to the differences
 */
public record RootstockVerdict(
    FactorVerdict type,
    Optional<FactorVerdict> condition,
    Optional<Pairings> pairings,
    Optional<TwoStocks> byHand,
    Optional<OffType> offType) {

  /**
   * Two stocks compared cultivar by cultivar, and pooled.
   *
   * @param first a rootstock
   * @param second the other one, or all others together
   * @param strata what the comparison is made within, in words
   * @param oddsRatio Mantel-Haenszel odds of taking on {@code first} against {@code second}; empty
   *     if no stratum has both or the ratio has no finite value
   * @param difference Mantel-Haenszel difference in take, first minus second, -1 to 1
   * @param agreement p of Breslow-Day with Tarone's correction that the strata agree, 0 to 1
   * @param sentence the same in words, flagged where strata disagree
   */
  public record TwoStocks(
      String first,
      String second,
      String strata,
      Optional<Estimate> oddsRatio,
      Optional<Estimate> difference,
      double agreement,
      String sentence) {}

  /**
   * If only some seedlings are true to type, a real difference looks smaller.
   *
   * @param trueToType share of seedlings true to type supposed, low to high
   * @param largest largest difference as estimated, 0 to 1
   * @param largestIfPure what it would be among seedlings true to type, at the low share, 0 to 1
   * @param sentence the same in words
   */
  public record OffType(
      Interval trueToType, double largest, double largestIfPure, String sentence) {}
}
