package org.taketally.app;

import java.util.OptionalDouble;
import org.taketally.plan.order.OrderTerms;
import org.taketally.plan.order.WoodUse;
import picocli.CommandLine.Option;

/** What a graft is made of and costs. */
final class SuppliesOptions {

  @Option(
      names = "--buds-per-graft",
      paramLabel = "N",
      defaultValue = "2",
      description = "Buds a graft uses (${DEFAULT-VALUE}).")
  private int budsPerGraft;

  @Option(
      names = "--buds-per-stick",
      paramLabel = "N",
      defaultValue = "8",
      description = "Usable buds on a stick (${DEFAULT-VALUE}).")
  private int budsPerStick;

  @Option(
      names = "--spoiled",
      paramLabel = "PERCENT",
      defaultValue = "10",
      converter = Percent.OrNone.class,
      description = "Sticks that can't be used when it comes to grafting (${DEFAULT-VALUE}).")
  private double spoiled;

  @Option(
      names = "--cost-per-graft",
      paramLabel = "MONEY",
      description = "What one graft costs to make, stock, wood and work included.")
  private Double cost;

  OrderTerms terms(double assurance) {
    return new OrderTerms(
        assurance,
        new WoodUse(budsPerGraft, budsPerStick, spoiled),
        cost == null ? OptionalDouble.empty() : OptionalDouble.of(cost));
  }

  String note(WoodUse wood) {
    return "Sticks: %d buds a graft, %d usable buds a stick, so %d grafts a stick; %.0f %% of the sticks spoil. Common practice, no source, unless you said otherwise."
        .formatted(
            wood.budsPerGraft(), wood.budsPerStick(), wood.graftsPerStick(), 100 * wood.spoiled());
  }
}
