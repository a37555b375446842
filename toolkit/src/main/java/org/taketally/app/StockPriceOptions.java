package org.taketally.app;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.verdict.RootstockVerdictCalculator;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeModel;
import org.taketally.plan.order.StockChoice;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What stocks cost, to name the cheapest among those that do as well. */
final class StockPriceOptions {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--stock-price",
      split = ",",
      paramLabel = "STOCK=MONEY",
      description =
          "Price of one plant of each stock: names the cheapest among those that your records show"
              + " to make no practical difference; needs --records.")
  private Map<String, Double> prices = new LinkedHashMap<>();

  @Option(
      names = "--margin",
      paramLabel = "POINTS",
      defaultValue = "10",
      converter = MarginOption.Points.class,
      description =
          "With --stock-price: a difference smaller than this changes nothing you do"
              + " (${DEFAULT-VALUE}).")
  private double margin;

  /** The choice, where prices were given; only lines that take any stock have one. */
  Optional<StockChoice> choice(PastRecordsOptions past, boolean anyStock) {
    OptionsTogether.requireNamesOnce(command.commandLine(), "--stock-price");
    if (prices.isEmpty()) {
      OptionsTogether.refuse(command.commandLine(), "needs --stock-price", "--margin");
      return Optional.empty();
    }
    if (!past.given()) {
      throw wrong("--stock-price needs --records, which say which stocks do as well as others");
    }
    if (!anyStock) {
      throw wrong("--stock-price: every line of the book names its stock, so none is to be chosen");
    }
    TakeModel model = SuggestedModel.of(past.records()).model();
    if (model.compared().isEmpty()) {
      throw wrong(
          "--stock-price: the records hold one rootstock only, so there is nothing to choose");
    }
    return Optional.of(
        StockChoice.of(
            RootstockVerdictCalculator.ofTypeAlone(
                model,
                CellsOf.records(past.records(), SuggestedModel.needed(model)),
                AnswerOptions.defaults().withMargin(margin)),
            prices));
  }

  private ParameterException wrong(String message) {
    return new ParameterException(command.commandLine(), message);
  }
}
