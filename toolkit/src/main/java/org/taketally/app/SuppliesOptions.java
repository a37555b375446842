package org.taketally.app;

import org.taketally.plan.order.OrderTerms;
import org.taketally.plan.order.WoodUse;
import org.taketally.wording.OrderBasisWords;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a graft is made of and costs. */
final class SuppliesOptions {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--buds-per-graft",
      paramLabel = "N",
      defaultValue = "2",
      converter = TypedValues.Count.class,
      description = "Buds a graft uses (${DEFAULT-VALUE}).")
  private int budsPerGraft;

  @Option(
      names = "--buds-per-stick",
      paramLabel = "N",
      defaultValue = "8",
      converter = TypedValues.Count.class,
      description = "Usable buds on a stick (${DEFAULT-VALUE}).")
  private int budsPerStick;

  @Option(
      names = "--spoiled",
      paramLabel = "PERCENT",
      defaultValue = "10",
      converter = Percent.OrNone.class,
      description = "Sticks that can't be used when it comes to grafting (${DEFAULT-VALUE}).")
  private double spoiled;

  @Mixin private GraftCostOption cost = new GraftCostOption();

  OrderTerms terms(double assurance) {
    if (budsPerStick < budsPerGraft) {
      throw new ParameterException(
          command.commandLine(),
          "--buds-per-stick: found %d, expected the buds of one graft (%d) at least; say more, or less as --buds-per-graft"
              .formatted(budsPerStick, budsPerGraft));
    }
    return new OrderTerms(
        assurance, new WoodUse(budsPerGraft, budsPerStick, spoiled), cost.value());
  }

  String note(WoodUse wood) {
    return OrderBasisWords.wood(wood);
  }
}
