package org.taketally.answers.verdict;

import java.util.List;
import java.util.OptionalDouble;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;

/**
 * What a drop in take costs per saleable tree, to help choose the margin. No price is built in.
 *
 * @param costPerGraft cost of one graft made, stock, wood and work included, in the user's money,
 *     above 0
 * @param lateLoss share of takes lost before sale, 0 or more, below 1
 * @param pricePerTree what a saleable tree brings, in the same money, above 0; empty if not said
 * @param now take as it is
 * @param atMargin the drop by the margin
 * @param drops drops shown, from the smallest up; {@code atMargin} among them
 */
public record MarginCost(
    double costPerGraft,
    double lateLoss,
    OptionalDouble pricePerTree,
    Drop now,
    Drop atMargin,
    List<Drop> drops)
    implements Answer {

  public MarginCost {
    drops = List.copyOf(drops);
  }

  /**
   * A take lower than it is now.
   *
   * @param points drop in take, 0 or more, as a share: 0.1 is 10 points
   * @param take what is left of the take, above 0, at most 1
   * @param perTree cost of one saleable tree, in the user's money
   * @param dearerBy what the drop adds to that cost, as a share of it now: 0.14 is 14 % dearer
   * @param leftPerGraft what is left of a graft made once its trees are sold, in the user's money,
   *     below 0 at a loss; empty if no price was said
   */
  public record Drop(
      double points, double take, double perTree, double dearerBy, OptionalDouble leftPerGraft) {}

  /**
   * Take as it is now.
   *
   * @return above 0, at most 1
   */
  public double take() {
    return now.take();
  }

  /**
   * Drop in take asked about.
   *
   * @return above 0, below the take
   */
  public double margin() {
    return atMargin.points();
  }

  @Override
  public Question question() {
    return Question.MARGIN_COST;
  }
}
