package org.taketally.answers.verdict;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.Agreement;
import org.taketally.answers.counts.Stratum;
import org.taketally.answers.effects.Pairings;
import org.taketally.terms.Interval;

/**
 * Does the rootstock matter? The verdict on the stock's type, and beside it everything a grower
 * would ask next.
 *
 * @param type verdict on the compared column, usually {@code rootstock}
 * @param condition the same for {@code stock_condition}; empty if the records lack it
 * @param pairings cultivars that fail on one stock alone; empty if it can't be estimated
 * @param byHand the view of two rootstocks that can be followed by hand: the two there are, the one
 *     that stands out against all others, or the two furthest apart; empty without cultivars
 * @param offType what seedlings not true to type would do to the differences
 */
public record RootstockVerdict(
    FactorVerdict type,
    Optional<FactorVerdict> condition,
    Optional<Pairings> pairings,
    Optional<TwoStocks> byHand,
    Optional<OffType> offType)
    implements Answer {

  /** Why two sides are compared by hand. */
  public enum Picked {
    /** There are only two. */
    ONLY_TWO,
    /** One stands out against all others. */
    STANDS_OUT,
    /** They lie furthest apart, which makes them look more different than they are. */
    FURTHEST_APART
  }

  /**
   * Two stocks compared cultivar by cultivar, and pooled.
   *
   * @param first a rootstock
   * @param second the other one; empty if all others together
   * @param picked why these two
   * @param cultivars takes on both sides, one a cultivar that was grafted on both
   * @param oddsRatio Mantel-Haenszel odds of taking on {@code first} against {@code second}; empty
   *     if no stratum has both or the ratio has no finite value
   * @param difference Mantel-Haenszel difference in take, first minus second, -1 to 1
   * @param agreement whether the cultivars tell the same story
   */
  public record TwoStocks(
      String first,
      Optional<String> second,
      Picked picked,
      List<Stratum> cultivars,
      Optional<Estimate> oddsRatio,
      Optional<Estimate> difference,
      Agreement agreement) {

    public TwoStocks {
      cultivars = List.copyOf(cultivars);
    }
  }

  /**
   * If only some seedlings are true to type, a real difference looks smaller.
   *
   * @param trueToType share of seedlings true to type supposed, low to high
   * @param largest largest difference as estimated, 0 to 1
   * @param largestIfPure what it would be among seedlings true to type, at the low share, 0 to 1
   * @param highIfPure upper end of its likely range, likewise, 0 to 1
   */
  public record OffType(
      Interval trueToType, double largest, double largestIfPure, double highIfPure) {}

  /**
   * One pair of levels of the compared column.
   *
   * @param level a level
   * @param other another
   * @return take of {@code level} minus take of {@code other}; empty if they weren't compared
   */
  public Optional<FactorVerdict.Pair> pair(String level, String other) {
    return type.pair(level, other);
  }

  /**
   * The verdict on the stock's type.
   *
   * @return one of five
   */
  public Verdict verdict() {
    return type.verdict();
  }

  @Override
  public Question question() {
    return Question.DOES_IT_MATTER;
  }
}
