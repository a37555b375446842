package org.taketally.app;

import org.taketally.plan.order.ForecastOrder;
import org.taketally.plan.order.SeasonTakes;
import org.taketally.plan.order.SeasonTakes.BatchLuck;
import org.taketally.wording.OrderBasisWords;
import org.taketally.wording.Words;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How far stated takes vary, and what is lost after the take. */
final class LuckOptions {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--season-spread",
      paramLabel = "POINTS",
      defaultValue = "6",
      converter = Points.class,
      description =
          "How far take differs from season to season, standard deviation (${DEFAULT-VALUE}; common"
              + " practice, no source).")
  private double seasonSpread;

  @Option(
      names = "--batch",
      paramLabel = "GRAFTS",
      defaultValue = "20",
      converter = TypedValues.Count.class,
      description = "Grafts made in one go, sharing wood, day and hand (${DEFAULT-VALUE}).")
  private int batch;

  @Option(
      names = "--batch-spread",
      paramLabel = "POINTS",
      defaultValue = "9",
      converter = Points.class,
      description =
          "How far batches of one season differ, standard deviation (${DEFAULT-VALUE}; common"
              + " practice, no source).")
  private double batchSpread;

  @Option(
      names = "--late-loss",
      paramLabel = "PERCENT",
      defaultValue = "0",
      converter = Percent.OrNone.class,
      description = "Takes lost before the tree is saleable (${DEFAULT-VALUE}).")
  private double lateLoss;

  /** Points as typed, 0 for none. */
  static final class Points implements ITypeConverter<Double> {
    @Override
    public Double convert(String typed) {
      return typed.strip().matches("0+([.]0*)?")
          ? Double.valueOf(0)
          : new MarginOption.Points().convert(typed);
    }
  }

  /**
   * Seasons that may be, for a stated take, as shares of grafts that end as saleable trees, from
   * worst to best.
   */
  SeasonTakes seasons(double take, int count) {
    return SeasonTakes.of(
            SeasonTakes.betaSeasons(
                take, correlation("--season-spread", seasonSpread, take), count),
            new BatchLuck(batch, correlation("--batch-spread", batchSpread, take)))
        .afterLosing(new double[] {lateLoss});
  }

  /** What is stated beside records. */
  ForecastOrder.Luck besideRecords() {
    return new ForecastOrder.Luck(batch, seasonSpread, lateLoss);
  }

  private double correlation(String option, double spread, double take) {
    double correlation = take >= 1 ? 0 : spread * spread / (take * (1 - take));
    if (!(correlation < 1)) {
      throw new ParameterException(
          command.commandLine(),
          "%s: found %s, but takes can't differ so much about one of %s; give less"
              .formatted(option, Words.statedPoints(spread), Words.statedPercent(take)));
    }
    return correlation;
  }

  /** What stated takes rest on. */
  String statedNote() {
    return OrderBasisWords.stated(seasonSpread, batch, batchSpread);
  }

  /** What is supposed where records hold one season only. */
  String oneSeasonNote() {
    return OrderBasisWords.oneSeason(seasonSpread);
  }

  /** What is lost after the take. */
  String lossNote() {
    return OrderBasisWords.lateLoss(lateLoss);
  }
}
