package org.taketally.answers.verdict;

import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Works out {@link MarginCost}.
 *
 * <p>A graft costs c whether it takes or not, so a saleable tree costs c / (take * (1 - loss)):
 * from 80 %, 10 points less make it a seventh dearer.
 */
public final class MarginCostCalculator {

  private static final double[] USUAL_DROPS = {0.02, 0.05, 0.10, 0.15, 0.20};

  private final Costs costs;
  private final double take;

  private MarginCostCalculator(Costs costs, double take) {
    this.costs = costs;
    this.take = take;
  }

  /**
   * What a graft costs, and what becomes of its trees.
   *
   * @param perGraft cost of one graft made, stock, wood and work included, in the user's money,
   *     above 0
   * @param lateLoss share of takes lost before sale, 0 or more, below 1
   * @param pricePerTree what a saleable tree brings, in the same money, above 0; empty if not said
   */
  public record Costs(double perGraft, double lateLoss, OptionalDouble pricePerTree) {
    public Costs {
      if (!(perGraft > 0)) {
        throw new IllegalArgumentException("the cost of a graft must be above 0, got " + perGraft);
      }
      if (!(lateLoss >= 0 && lateLoss < 1)) {
        throw new IllegalArgumentException(
            "late loss must be 0 or more and below 1, got " + lateLoss);
      }
      if (pricePerTree.isPresent() && !(pricePerTree.getAsDouble() > 0)) {
        throw new IllegalArgumentException(
            "the price of a tree must be above 0, got " + pricePerTree.getAsDouble());
      }
    }
  }

  /**
   * What a drop in take costs, without late losses or a price.
   *
   * @param costPerGraft cost of one graft made, above 0
   * @param take take as it is now, above 0, at most 1
   * @param margin drop in take asked about, above 0, below {@code take}
   * @return the cost at the take as it is, at the margin, and at the usual drops
   */
  public static MarginCost of(double costPerGraft, double take, double margin) {
    return of(new Costs(costPerGraft, 0, OptionalDouble.empty()), take, margin);
  }

  /**
   * What a drop in take costs.
   *
   * @param costs of a graft
   * @param take take as it is now, above 0, at most 1
   * @param margin drop in take asked about, above 0, below {@code take}
   * @return the cost at the take as it is, at the margin, and at the usual drops
   */
  public static MarginCost of(Costs costs, double take, double margin) {
    if (!(take > 0 && take <= 1)) {
      throw new IllegalArgumentException(
          "take must be above 0 and at most 1 (0.8 for 80 %), got " + take);
    }
    if (!(margin > 0 && margin < take)) {
      throw new IllegalArgumentException(
          "the margin must be above 0 and below the take (%s), got %s".formatted(take, margin));
    }
    MarginCostCalculator at = new MarginCostCalculator(costs, take);
    return new MarginCost(
        costs.perGraft(),
        costs.lateLoss(),
        costs.pricePerTree(),
        at.drop(0),
        at.drop(margin),
        DoubleStream.concat(DoubleStream.of(0, margin), DoubleStream.of(USUAL_DROPS))
            .filter(points -> points < take)
            .distinct()
            .sorted()
            .mapToObj(at::drop)
            .toList());
  }

  private MarginCost.Drop drop(double points) {
    double left = take - points;
    double kept = 1 - costs.lateLoss();
    OptionalDouble price = costs.pricePerTree();
    return new MarginCost.Drop(
        points,
        left,
        costs.perGraft() / (left * kept),
        take / left - 1,
        price.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(price.getAsDouble() * left * kept - costs.perGraft()));
  }
}
