package org.taketally.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.terms.Logit;

class LearntSeasonTest {

  private static final LocalDate START = LocalDate.of(2026, 4, 1);
  private static final int SEASONS = 200;
  private static final int LOTS = 60;

  /** Seasons that differ by 0.5 logits, lots of fifteen that differ by 0.3 beside that. */
  private static List<SeasonChart.Lot> season() {
    Random random = new Random(5);
    double[] effect = random.doubles(SEASONS).map(u -> 0).toArray();
    Arrays.setAll(effect, d -> 0.5 * random.nextGaussian());
    List<SeasonChart.Lot> lots = new ArrayList<>();
    for (int i = 0; i < LOTS; i++) {
      double middle = i % 2 == 0 ? 1.2 : 0.1;
      double[] takes = new double[SEASONS];
      Arrays.setAll(
          takes, d -> LearntSeason.take(middle + effect[d] + 0.3 * random.nextGaussian()));
      lots.add(new SeasonChart.Lot(15, new LotExpectation(takes, 0.02)));
    }
    return lots;
  }

  private static SeasonChart chart(List<SeasonChart.Lot> season, double falseAlarms) {
    List<LotExpectation> planned = new LearntSeason(season).planned();
    return SeasonChart.of(
        IntStream.range(0, LOTS)
            .mapToObj(i -> new SeasonChart.Lot(season.get(i).grafts(), planned.get(i)))
            .toList(),
        2,
        falseAlarms);
  }

  private static int[] takes(List<SeasonChart.Lot> season, Random random, double[] odds) {
    int luck = random.nextInt(SEASONS);
    return IntStream.range(0, LOTS)
        .map(
            i -> {
              double p = LotCounts.shifted(season.get(i).expected().takes()[luck], odds[i]);
              double own =
                  LearntSeason.take(
                      Logit.of(p) + Math.sqrt(0.02 / (p * (1 - p))) * random.nextGaussian());
              return (int) IntStream.range(0, 15).filter(g -> random.nextDouble() < own).count();
            })
        .toArray();
  }

  private static List<SeasonChart.Step> run(
      List<SeasonChart.Lot> season, SeasonChart chart, int[] takes) {
    List<WatchedLot> lots =
        IntStream.range(0, LOTS)
            .mapToObj(i -> new WatchedLot("L" + i, START.plusDays(i / 3), 15, takes[i], Map.of()))
            .toList();
    return chart.run(lots, new LearntSeason(season).from(takes).expected());
  }

  @Test
  void false_alarms_stay_as_stated_while_the_level_is_learnt() {
    List<SeasonChart.Lot> season = season();
    double[] none = new double[LOTS];
    Arrays.fill(none, 1);
    for (double stated : new double[] {0.2, 1}) {
      SeasonChart chart = chart(season, stated);
      Random random = new Random(6);
      long alarms = 0;
      for (int year = 0; year < 2000; year++) {
        alarms +=
            run(season, chart, takes(season, random, none)).stream()
                .filter(SeasonChart.Step::alarm)
                .count();
      }
      assertThat(alarms / 2000.0).isCloseTo(stated, within(0.1 * stated));
    }
  }

  @Test
  void a_bad_week_is_found_in_most_seasons() {
    List<SeasonChart.Lot> season = season();
    SeasonChart chart = chart(season, 0.2);
    double[] odds = new double[LOTS];
    Arrays.fill(odds, 1);
    Arrays.fill(odds, 30, 42, 3.5);
    Random random = new Random(7);
    int found = 0;
    for (int year = 0; year < 300; year++) {
      List<SeasonChart.Step> steps = run(season, chart, takes(season, random, odds));
      found += IntStream.range(30, 48).anyMatch(i -> steps.get(i).alarm()) ? 1 : 0;
    }
    assertThat(found).isGreaterThan(200);
  }

  @Test
  void the_effect_of_the_season_is_learnt() {
    List<SeasonChart.Lot> season = season();
    LearntSeason learnt = new LearntSeason(season);
    assertThat(learnt.tau()).isCloseTo(0.5, within(0.06));
    int[] takes =
        IntStream.range(0, LOTS)
            .map(i -> (int) Math.round(15 * LearntSeason.take((i % 2 == 0 ? 1.2 : 0.1) - 0.6)))
            .toArray();
    assertThat(learnt.from(takes).seasonEffect()).isBetween(-0.65, -0.4);
  }
}
