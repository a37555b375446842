package org.taketally.watch;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.plan.forecast.PastSeasons;
import org.taketally.plan.forecast.SeasonForecast;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Logit;
import org.taketally.watch.TakeWatch.CountedLot;

/** Watches the lots of a season against what past records let expect. */
public final class SeasonWatch {

  /** Seasons that may be, behind the expectation. */
  private static final int SEASONS = 100;

  /** A column that groups what is done in one go has new levels every season. */
  private static final List<String> NEW_EVERY_SEASON =
      List.of(
          RecordColumn.SEASON.columnName(),
          DerivedColumn.GRAFTING_DAY.columnName(),
          RecordColumn.BLOCK.columnName());

  private SeasonWatch() {}

  /**
   * What to look for.
   *
   * @param oddsRatio odds of failing to be found fast, against those expected, above 1, e.g. 2
   * @param falseAlarms stated number a season while all is as expected, above 0, e.g. 0.2
   * @param seed of everything random
   */
  public record Settings(double oddsRatio, double falseAlarms, long seed) {

    /**
     * The usual ones.
     *
     * @return doubled odds of failing, one false alarm in five seasons
     */
    public static Settings defaults() {
      return new Settings(2, 0.2, 1);
    }
  }

  /**
   * Watches a season.
   *
   * @param season its lots, at least one counted
   * @param past records of earlier seasons
   * @param settings what to look for
   * @return the chart, its alarms, and how the season runs as a whole
   * @throws org.taketally.model.CannotFit if the past records let nothing be expected
   */
  public static WatchedSeason of(SeasonLots season, GraftRecords past, Settings settings) {
    if (season.counted().isEmpty()) {
      throw new IllegalArgumentException(
          "no lot of the season is counted on a stated day yet: %s without a result, %d without assessed_date; watch again when some are counted"
              .formatted(season.notCounted(), season.withoutDay()));
    }
    SeasonForecast forecast = SeasonForecast.of(PastSeasons.fit(past), SEASONS, settings.seed());
    List<LotExpectation> rows =
        season.values().stream().map(values -> expectation(forecast, values)).toList();
    Sessions sessions = Sessions.of(season, rows);
    LearntSeason learning = new LearntSeason(sessions.lots());
    LearntSeason.Learnt learnt = learning.from(sessions.takes());
    SeasonChart chart = chart(sessions, typicalSeason(past), settings);
    List<CountedLot> counted =
        IntStream.range(0, sessions.lots().size())
            .mapToObj(i -> new CountedLot(sessions.counted().get(i), learnt.expected().get(i)))
            .toList();
    List<CountedLot> each =
        IntStream.range(0, rows.size())
            .mapToObj(
                i ->
                    new CountedLot(
                        season.counted().get(i), moved(rows.get(i), learnt.seasonEffect())))
            .toList();
    double expectedFailures =
        IntStream.range(0, rows.size())
            .mapToDouble(i -> season.counted().get(i).grafts() * (1 - rows.get(i).mean()))
            .sum();
    double mean = 1 - expectedFailures / season.grafts();
    return new WatchedSeason(
        TakeWatch.of(counted, chart, each),
        expectedFailures,
        learnt.seasonEffect(),
        learning.tau(),
        LearntSeason.take(Logit.of(mean) + learnt.seasonEffect()) - mean,
        SeenFailures.of(each),
        CountsDue.of(season, past));
  }

  /** The limit is set for a season as long as past ones, before anything of it is counted. */
  private static SeasonChart chart(Sessions sessions, long grafts, Settings settings) {
    List<SeasonChart.Lot> whole = sessions.repeatedTo(grafts);
    List<LotExpectation> planned = new LearntSeason(whole).planned();
    return SeasonChart.of(
        IntStream.range(0, whole.size())
            .mapToObj(i -> new SeasonChart.Lot(whole.get(i).grafts(), planned.get(i)))
            .toList(),
        settings.oddsRatio(),
        settings.falseAlarms());
  }

  private static LotExpectation moved(LotExpectation expected, double seasonEffect) {
    return new LotExpectation(
        new double[] {LearntSeason.take(Logit.of(expected.mean()) + seasonEffect)},
        expected.correlation());
  }

  private static LotExpectation expectation(SeasonForecast forecast, Map<String, String> values) {
    Map<String, String> lot = new LinkedHashMap<>(values);
    NEW_EVERY_SEASON.forEach(
        column -> lot.put(column, "this season: " + values.getOrDefault(column, "")));
    double[] takes = forecast.takes(lot);
    double mean = Arrays.stream(takes).average().orElseThrow();
    return new LotExpectation(takes, forecast.correlation(mean, List.of(Cells.BATCH_ROW)));
  }

  private static long typicalSeason(GraftRecords past) {
    return past.grafts() / Math.max(1, past.check().seasons().size());
  }
}
