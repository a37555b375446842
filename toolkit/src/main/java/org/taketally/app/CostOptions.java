package org.taketally.app;

import java.util.OptionalDouble;
import org.taketally.analysis.Analysis;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a graft costs and a tree brings, to see what the margin is worth. */
final class CostOptions {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Mixin private GraftCostOption cost = new GraftCostOption();

  @Option(
      names = "--price-per-tree",
      paramLabel = "MONEY",
      description =
          "What a saleable tree brings; goes with --cost-per-graft, which shows what the margin"
              + " costs a saleable tree.")
  private Double price;

  /** The analysis with the cost of the margin, if prices were given. */
  Analysis added(Analysis analysis) {
    if (cost.value().isEmpty()) {
      return analysis;
    }
    return analysis.withCost(cost.value().getAsDouble(), price());
  }

  /** Said before the records are read. */
  void requireSense() {
    if (price != null && cost.value().isEmpty()) {
      throw wrong("--price-per-tree needs --cost-per-graft beside it");
    }
    requireAboveZero("--cost-per-graft", cost.value());
    requireAboveZero("--price-per-tree", price());
  }

  private OptionalDouble price() {
    return price == null ? OptionalDouble.empty() : OptionalDouble.of(price);
  }

  private void requireAboveZero(String option, OptionalDouble money) {
    if (money.isPresent() && !(money.getAsDouble() > 0)) {
      throw wrong(
          "%s: found %s, expected an amount above 0, e.g. 4.50"
              .formatted(option, money.getAsDouble()));
    }
  }

  private ParameterException wrong(String message) {
    return new ParameterException(command.commandLine(), message);
  }
}
