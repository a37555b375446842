package org.taketally.app;

import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** What a graft costs, for every command that reckons in money. */
final class GraftCostOption {

  @Option(
      names = "--cost-per-graft",
      paramLabel = "MONEY",
      description = "Cost of one graft made, stock, wood and work included.")
  private Double cost;

  /** As typed, if it was. */
  OptionalDouble value() {
    return cost == null ? OptionalDouble.empty() : OptionalDouble.of(cost);
  }
}
