package org.taketally.plan.order;

import java.util.OptionalDouble;

/**
 * How sure an order is to be, and what it is made of. Immutable: {@code
 * OrderTerms.defaults().withAssurance(0.8)}.
 *
 * @param assurance chance wanted, for each line, of having all its trees, above 0 and below 1;
 *     default 0.90
 * @param wood buds and sticks; default 2 buds a graft, 8 a stick, none spoiled
 * @param costPerGraft what a graft costs to make, stock, wood and work included, above 0; empty if
 *     not said
 */
public record OrderTerms(double assurance, WoodUse wood, OptionalDouble costPerGraft) {

  public OrderTerms {
    GraftsNeeded.requireAssurance(assurance);
    if (costPerGraft.isPresent() && !(costPerGraft.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          "the cost of a graft must be above 0, e.g. 4.50, got " + costPerGraft.getAsDouble());
    }
  }

  /**
   * Nine seasons in ten.
   *
   * @return the terms
   */
  public static OrderTerms defaults() {
    return new OrderTerms(0.90, new WoodUse(2, 8, 0), OptionalDouble.empty());
  }

  /**
   * Other assurance.
   *
   * @param chance above 0 and below 1
   * @return new terms
   */
  public OrderTerms withAssurance(double chance) {
    return new OrderTerms(chance, wood, costPerGraft);
  }

  /**
   * Other wood.
   *
   * @param use buds and sticks
   * @return new terms
   */
  public OrderTerms withWood(WoodUse use) {
    return new OrderTerms(assurance, use, costPerGraft);
  }

  /**
   * With a cost.
   *
   * @param cost of one graft made, above 0
   * @return new terms
   */
  public OrderTerms withCostPerGraft(double cost) {
    return new OrderTerms(assurance, wood, OptionalDouble.of(cost));
  }
}
