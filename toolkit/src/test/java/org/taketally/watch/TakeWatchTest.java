package org.taketally.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.taketally.watch.TakeWatch.CountedLot;
import org.taketally.watch.chart.CusumWeight;

class TakeWatchTest {

  private static final LocalDate START = LocalDate.of(2026, 4, 1);
  private static final int SEASONS = 60;

  /** Takes of a lot about a middle, in seasons that differ by a logit's spread. */
  private static double[] seasons(double logit, double spread, long seed) {
    Random random = new Random(seed);
    return IntStream.range(0, SEASONS)
        .mapToDouble(d -> 1 / (1 + Math.exp(-logit - spread * random.nextGaussian())))
        .toArray();
  }

  /** Eighty lots of ten, of easy and hard cultivars, in seasons that differ by 0.3 logits. */
  private static List<SeasonChart.Lot> season(double spread, double correlation) {
    return IntStream.range(0, 80)
        .mapToObj(
            i ->
                new SeasonChart.Lot(
                    10, new LotExpectation(seasons(i % 2 == 0 ? 2 : 0.3, spread, 5), correlation)))
        .toList();
  }

  private static WatchedLot lot(int i, int takes, Map<String, String> groups) {
    return new WatchedLot("L%03d".formatted(i), START.plusDays(i / 4), 10, takes, groups);
  }

  @Test
  void single_grafts_weigh_what_steiner_and_others_give_them() {
    LotExpectation sure = new LotExpectation(new double[] {0.8}, 0);
    SeasonChart chart = SeasonChart.of(List.of(new SeasonChart.Lot(1, sure)), 2, 0.1);
    CusumWeight published = new CusumWeight(2);
    WatchedLot took = new WatchedLot("a", START, 1, 1, Map.of());
    WatchedLot failed = new WatchedLot("b", START, 1, 0, Map.of());
    assertThat(chart.weight(took, sure)).isCloseTo(published.ofTake(0.8), within(1e-12));
    assertThat(chart.weight(failed, sure)).isCloseTo(published.ofFailure(0.8), within(1e-12));
  }

  private static double alarmsASeason(List<SeasonChart.Lot> season, SeasonChart chart, int years) {
    Well19937c random = new Well19937c(12);
    long alarms = 0;
    List<LotExpectation> expected = season.stream().map(SeasonChart.Lot::expected).toList();
    for (int year = 0; year < years; year++) {
      int luck = random.nextInt(SEASONS);
      List<WatchedLot> counted = new ArrayList<>();
      for (int i = 0; i < season.size(); i++) {
        counted.add(lot(i, takes(season.get(i), luck, random), Map.of()));
      }
      alarms += chart.run(counted, expected).stream().filter(SeasonChart.Step::alarm).count();
    }
    return (double) alarms / years;
  }

  private static int takes(SeasonChart.Lot lot, int luck, Well19937c random) {
    double p = lot.expected().takes()[luck];
    double rho = lot.expected().correlation();
    double size = (1 - rho) / rho;
    double own = rho == 0 ? p : new BetaDistribution(random, p * size, (1 - p) * size).sample();
    int takes = 0;
    for (int graft = 0; graft < lot.grafts(); graft++) {
      takes += random.nextDouble() < own ? 1 : 0;
    }
    return takes;
  }

  /**
   * 3,000 seasons in which nothing is wrong but seasons and lots differ as expected: false alarms
   * within 10 % of the stated (Monte Carlo error about 4 %). A limit that takes the average for
   * certain cries wolf far more often.
   */
  @Test
  void false_alarms_stay_as_stated_though_the_season_is_uncertain() {
    List<SeasonChart.Lot> season = season(0.3, 0.05);
    for (double stated : new double[] {0.2, 1}) {
      SeasonChart chart = SeasonChart.of(season, 2, stated);
      assertThat(alarmsASeason(season, chart, 3000)).isCloseTo(stated, within(0.1 * stated));
    }
    List<SeasonChart.Lot> taken =
        season.stream()
            .map(
                lot ->
                    new SeasonChart.Lot(
                        lot.grafts(), new LotExpectation(new double[] {lot.expected().mean()}, 0)))
            .toList();
    SeasonChart naive = SeasonChart.of(taken, 2, 0.2);
    assertThat(alarmsASeason(season, naive, 500)).isGreaterThan(0.6);
  }

  /** Whole season as expected but for one bad fridge batch and a hot week. */
  @Test
  void a_bad_batch_is_alarmed_and_named_first_a_hot_week_second() {
    List<SeasonChart.Lot> season = season(0.2, 0.03);
    SeasonChart chart = SeasonChart.of(season, 2, 0.2);
    Random random = new Random(8);
    List<CountedLot> counted = new ArrayList<>();
    for (int i = 0; i < 80; i++) {
      double p = season.get(i).expected().mean();
      boolean batch = i % 8 == 3 && i >= 24;
      boolean hot = i / 28 == 1;
      double odds = (batch ? 12.0 : 1) * (hot ? 2.2 : 1);
      double take = LotCounts.shifted(p, odds);
      int takes = (int) IntStream.range(0, 10).filter(g -> random.nextDouble() < take).count();
      WatchedLot lot =
          lot(
              i,
              takes,
              Map.of(
                  "grafter", "GR-" + i % 5,
                  "fridge_batch", batch ? "7" : "F" + i % 6,
                  "week", "week " + i / 28));
      counted.add(new CountedLot(lot, season.get(i).expected()));
    }
    TakeWatch watch = TakeWatch.of(counted, chart);
    assertThat(watch.alarms()).isNotEmpty();
    LocalDate first = watch.alarms().get(0).day();
    // the batch's first count is lot 27, on day 6; three working days later at most
    assertThat(first).isBetween(START.plusDays(6), START.plusDays(11));
    List<Cause> causes =
        new CauseFinder(
                counted.stream().map(CountedLot::lot).toList(),
                counted.stream().map(CountedLot::expected).toList())
            .causes();
    assertThat(causes.get(0).level()).isEqualTo("7");
    assertThat(causes.get(0).excess()).isGreaterThan(10);
    assertThat(causes.get(1).level()).isEqualTo("week 1");
  }

  @Test
  void nothing_is_named_where_nothing_is_wrong() {
    List<SeasonChart.Lot> season = season(0.2, 0.05);
    List<CountedLot> counted =
        IntStream.range(0, 80)
            .mapToObj(
                i ->
                    new CountedLot(
                        lot(i, i % 2 == 0 ? 9 : 6, Map.of("grafter", "GR-" + i % 5)),
                        season.get(i).expected()))
            .toList();
    TakeWatch watch = TakeWatch.of(counted, SeasonChart.of(season, 2, 0.2));
    assertThat(watch.alarms()).isEmpty();
    assertThat(watch.latest()).isEmpty();
    assertThat(watch.grafts()).isEqualTo(800);
  }

  @Test
  void refuses_nonsense_with_the_remedy() {
    List<SeasonChart.Lot> season = season(0.2, 0);
    assertThatThrownBy(() -> SeasonChart.of(season, 1, 0.2))
        .hasMessageContaining("must be above 1 times those expected, e.g. 2, got 1.0");
    assertThatThrownBy(() -> SeasonChart.of(season, 2, 0))
        .hasMessageContaining("false alarms a season must be above 0");
    assertThatThrownBy(() -> SeasonChart.of(List.of(), 2, 0.2))
        .hasMessage("a season to watch needs at least one lot");
    assertThatThrownBy(() -> new LotExpectation(new double[] {1.2}, 0))
        .hasMessageContaining("expected takes must lie between 0 and 1");
    assertThatThrownBy(() -> new WatchedLot("a", START, 3, 4, Map.of()))
        .hasMessage("takes must be 0 to 3 (grafts, 1 or more), got 4 for a");
  }
}
