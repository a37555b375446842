package org.taketally.answers.verdict;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;

/**
 * What a drop in take costs per saleable tree, to help choose the margin. No price is built in.
 *
 * <p>A graft costs c whether it takes or not, so a saleable tree costs c / (take * (1 - loss)):
 * from 80 %, 10 points less make it a seventh dearer.
 *
 * @param costPerGraft cost of one graft made, stock, wood and work included, in the user's money,
 *     above 0
 * @param take take as it is now, above 0, at most 1
 * @param lateLoss share of takes lost before sale, 0 or more, below 1
 * @param margin drop in take asked about, above 0, below {@code take}
 * @param pricePerTree what a saleable tree brings, in the same money, above 0; empty if not said
 */
public record MarginCost(
    double costPerGraft, double take, double lateLoss, double margin, OptionalDouble pricePerTree)
    implements Answer {

  private static final double[] USUAL_DROPS = {0.02, 0.05, 0.10, 0.15, 0.20};

  public MarginCost {
    if (!(costPerGraft > 0)) {
      throw new IllegalArgumentException(
          "the cost of a graft must be above 0, got " + costPerGraft);
    }
    if (!(take > 0 && take <= 1)) {
      throw new IllegalArgumentException(
          "take must be above 0 and at most 1 (0.8 for 80 %), got " + take);
    }
    if (!(lateLoss >= 0 && lateLoss < 1)) {
      throw new IllegalArgumentException(
          "late loss must be 0 or more and below 1, got " + lateLoss);
    }
    if (!(margin > 0 && margin < take)) {
      throw new IllegalArgumentException(
          "the margin must be above 0 and below the take (%s), got %s".formatted(take, margin));
    }
    if (pricePerTree.isPresent() && !(pricePerTree.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          "the price of a tree must be above 0, got " + pricePerTree.getAsDouble());
    }
  }

  /**
   * Without late losses or a price.
   *
   * @param costPerGraft cost of one graft made, above 0
   * @param take take as it is now, above 0, at most 1
   * @param margin drop in take asked about, above 0, below {@code take}
   * @return the cost
   */
  public static MarginCost of(double costPerGraft, double take, double margin) {
    return new MarginCost(costPerGraft, take, 0, margin, OptionalDouble.empty());
  }

  /**
   * Cost of one saleable tree at a take.
   *
   * @param atTake above 0, at most 1
   * @return in the user's money
   */
  public double perTree(double atTake) {
    return costPerGraft / (atTake * (1 - lateLoss));
  }

  /**
   * What the margin adds to the cost of a tree.
   *
   * @return share of the present cost, above 0: 0.14 is 14 % dearer
   */
  public double dearerBy() {
    return dearerBy(margin);
  }

  /**
   * What a drop adds to the cost of a tree.
   *
   * @param drop 0 or more, below the take
   * @return share of the present cost
   */
  public double dearerBy(double drop) {
    return take / (take - drop) - 1;
  }

  /**
   * The drops in take shown.
   *
   * @return from 0 up, the margin among them, each below the take
   */
  public List<Double> drops() {
    return DoubleStream.concat(DoubleStream.of(0, margin), DoubleStream.of(USUAL_DROPS))
        .filter(drop -> drop < take)
        .distinct()
        .sorted()
        .boxed()
        .toList();
  }

  /**
   * What is left of a graft made once its trees are sold.
   *
   * @param atTake above 0, at most 1
   * @return in the user's money, below 0 at a loss; empty if no price was said
   */
  public OptionalDouble leftPerGraft(double atTake) {
    return pricePerTree.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(pricePerTree.getAsDouble() * atTake * (1 - lateLoss) - costPerGraft);
  }

  @Override
  public Question question() {
    return Question.MARGIN_COST;
  }
}
