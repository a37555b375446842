package org.taketally.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.batches.LevelAgainstOthersCalculator;
import org.taketally.model.TakeModel;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** What take may depend on, and what is asked of it. */
final class ModelOptions {

  private static final int CURVE_FREEDOM = 3;

  @Option(
      names = "--adjust-for",
      split = ",",
      paramLabel = "COLUMN",
      description = "Columns adjusted for: text as levels, numbers as a straight line.")
  private List<String> adjusted = new ArrayList<>();

  @Option(
      names = "--curve",
      split = ",",
      paramLabel = "COLUMN",
      description = "Numbers adjusted for as a smooth curve, e.g. storage_days.")
  private List<String> curves = new ArrayList<>();

  @Option(
      names = "--vary-by",
      split = ",",
      paramLabel = "COLUMN",
      description =
          "Columns whose levels vary around a common mean: cultivar, rootstock, pairing, grafter,"
              + " site, season, grafting_day.")
  private List<String> varying = new ArrayList<>();

  @Option(
      names = "--compare",
      paramLabel = "COLUMN",
      description = "The column the verdict is about (rootstock).")
  private String compared;

  @Option(
      names = "--is",
      paramLabel = "LEVEL",
      description =
          "With --compare: that level against all others, as in --compare fridge_batch --is 7.")
  private String level;

  @Option(
      names = "--base",
      paramLabel = "COLUMN=LEVEL",
      description = "The level others are compared with.")
  private Map<String, String> bases = new LinkedHashMap<>();

  @Mixin private MarginOption margin = new MarginOption();

  @Option(
      names = "--nodes",
      paramLabel = "N",
      defaultValue = "1",
      description = "Exact integration with N nodes where one column varies (1: off).")
  private int nodes = 1;

  @Mixin private SeedOption seed = new SeedOption();

  @Option(
      names = "--prior-scale",
      paramLabel = "LOGITS",
      defaultValue = "1",
      description =
          "How much days, hands and the like are believed to differ before the records are seen"
              + " (${DEFAULT-VALUE}; see docs/methods.md).")
  private double priorScale = 1;

  /** Whether the person named any part of the model. */
  boolean named() {
    return !(adjusted.isEmpty() && curves.isEmpty() && varying.isEmpty());
  }

  /** The model as named on the command line. */
  TakeModel model() {
    TakeModel model = TakeModel.ofTakes().adjustFor(adjusted.toArray(String[]::new));
    for (String column : curves) {
      model = model.adjustForCurve(column, CURVE_FREEDOM);
    }
    return asked(model.varyBy(varying.toArray(String[]::new)).nodes(nodes));
  }

  /** A model with the question and base levels that were asked for. */
  TakeModel asked(TakeModel model) {
    TakeModel result = compared == null || level != null ? model : model.compare(compared);
    for (Map.Entry<String, String> base : bases.entrySet()) {
      result = result.base(base.getKey(), base.getValue());
    }
    return result;
  }

  /** The level that is asked about, and its column. */
  Optional<LevelAgainstOthersCalculator.Asked> level(CommandLine command) {
    if (level == null) {
      return Optional.empty();
    }
    if (compared == null) {
      throw new ParameterException(
          command,
          "--is names a level; say of which column: --compare COLUMN --is \"%s\"".formatted(level));
    }
    return Optional.of(new LevelAgainstOthersCalculator.Asked(compared, level));
  }

  AnswerOptions answers() {
    return AnswerOptions.defaults()
        .withMargin(margin.value())
        .withSeed(seed.value())
        .withPriorScale(priorScale);
  }
}
