package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.terms.Interval;
import org.taketally.terms.Provenance;

/** Takes and counts of lots not yet made, against simulation. */
class LotPredictionTest {

  private static final double DAY_SD = 0.8;
  private static final TakeModel MODEL =
      TakeModel.ofTakes()
          .adjustFor("storage_days")
          .compare("rootstock")
          .varyBy("cultivar", "grafting_day");

  /** Truth of one cultivar's logit without its day, and records of it and others. */
  private record Trial(Cells cells, double logitOfC1) {}

  private static Trial trial(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int size = 200;
    int[][] codes = new int[3][size];
    double[] days = new double[size];
    int[] grafts = new int[size];
    int[] takes = new int[size];
    double[] cultivars =
        IntStream.range(0, 10).mapToDouble(j -> 0.5 * random.nextGaussian()).toArray();
    double[] luck =
        IntStream.range(0, 40).mapToDouble(j -> DAY_SD * random.nextGaussian()).toArray();
    for (int i = 0; i < size; i++) {
      codes[0][i] = random.nextInt(10);
      codes[1][i] = random.nextInt(2);
      codes[2][i] = i / 5;
      days[i] = random.nextInt(6);
      grafts[i] = 6;
      double eta = 0.8 + cultivars[codes[0][i]] + luck[codes[2][i]] - 0.1 * days[i];
      for (int n = 0; n < 6; n++) {
        takes[i] += random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
      }
    }
    Cells cells =
        new Cells(
            List.of(
                factor("cultivar", 10, codes[0]),
                factor("rootstock", 2, codes[1]),
                factor("grafting_day", 40, codes[2])),
            List.of(new Measure("storage_days", days)),
            grafts,
            takes,
            0,
            Provenance.of("simulated", size));
    return new Trial(cells, 0.8 + cultivars[0] - 0.1 * 2);
  }

  private static Factor factor(String name, int size, int[] codes) {
    String letter = name.substring(0, 1).toUpperCase(java.util.Locale.ROOT);
    return new Factor(
        name, IntStream.rangeClosed(1, size).mapToObj(j -> letter + j).toList(), codes);
  }

  private static final PlannedLot LOT =
      PlannedLot.any().with("cultivar", "C1").with("rootstock", "R2").with("storage_days", 2);

  /** Lots of the same new day share its luck draw by draw, so their takes go together. */
  @Test
  void draws_of_lots_stand_in_the_order_of_the_draws() {
    TakeFit fit = MODEL.fit(trial(5).cells());
    TakeDraws draws = fit.draws(500, 3);
    double[] one = fit.predict(LOT, draws).draws();
    double[] other = fit.predict(LOT.with("cultivar", "C2"), draws).draws();
    var correlation = new org.apache.commons.math3.stat.correlation.PearsonsCorrelation();
    assertThat(correlation.correlation(one, other)).isBetween(0.4, 0.97);
    double[] ascending = one.clone();
    java.util.Arrays.sort(ascending);
    assertThat(correlation.correlation(ascending, other)).isBetween(-0.2, 0.2);
  }

  /** Every draw by hand, a new day and the luck of each graft drawn anew. */
  @Test
  void agrees_with_simulation_by_brute_force() {
    TakeFit fit = MODEL.fit(trial(1).cells());
    int count = 4_000;
    TakeDraws draws = fit.draws(count, 7);
    LotPrediction prediction = fit.predict(LOT, draws);
    SplittableRandom random = new SplittableRandom(3);
    int grafts = 12;
    double[] frequencies = new double[grafts + 1];
    int rounds = 20;
    for (int d = 0; d < count; d++) {
      double[] beta = draws.beta(d);
      double known = beta[0] + 2 * beta[1] + beta[2] + draws.effects("cultivar", d)[0];
      for (int round = 0; round < rounds; round++) {
        double eta = known + draws.sds(d)[1] * random.nextGaussian();
        int took = 0;
        for (int n = 0; n < grafts; n++) {
          took += random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
        }
        frequencies[took] += 1.0 / (count * rounds);
      }
    }
    double[] chances = prediction.counts(grafts);
    for (int k = 0; k <= grafts; k++) {
      assertThat(chances[k]).as("%d takes", k).isCloseTo(frequencies[k], within(0.006));
    }
    assertThat(prediction.probabilityOfAtLeast(0, grafts)).isCloseTo(1, within(1e-9));
    assertThat(prediction.probabilityOfAtLeast(grafts, grafts)).isEqualTo(chances[grafts]);
  }

  /** Of true lots on new days, 90 % ranges hold about 90 % and not all. */
  @Test
  void ranges_hold_as_often_as_they_say() {
    SplittableRandom random = new SplittableRandom(5);
    int held = 0;
    int sharesHeld = 0;
    int lots = 0;
    for (int seed = 0; seed < 15; seed++) {
      Trial trial = trial(100 + seed);
      LotPrediction prediction = MODEL.fit(trial.cells()).predict(LOT);
      Interval count = prediction.count(20, 0.9);
      Interval take = prediction.take(0.9);
      for (int lot = 0; lot < 40; lot++) {
        double share = 1 / (1 + Math.exp(-trial.logitOfC1() - DAY_SD * random.nextGaussian()));
        int took = 0;
        for (int n = 0; n < 20; n++) {
          took += random.nextDouble() < share ? 1 : 0;
        }
        held += took >= count.low() && took <= count.high() ? 1 : 0;
        sharesHeld += share >= take.low() && share <= take.high() ? 1 : 0;
        lots++;
      }
    }
    assertThat(held / (double) lots).isBetween(0.86, 0.98);
    assertThat(sharesHeld / (double) lots).isBetween(0.84, 0.97);
  }

  @Test
  void what_is_not_said_makes_the_range_wider() {
    TakeFit fit = MODEL.fit(trial(2).cells());
    TakeDraws draws = fit.draws(1_000, 2);
    Interval known = fit.predict(LOT.with("grafting_day", "G3"), draws).take(0.9);
    Interval day = fit.predict(LOT, draws).take(0.9);
    Interval cultivar = fit.predict(PlannedLot.any().with("rootstock", "R2"), draws).take(0.9);
    assertThat(known.high() - known.low()).isLessThan(day.high() - day.low());
    assertThat(day.high() - day.low()).isLessThan(cultivar.high() - cultivar.low());
    LotPrediction newDay = fit.predict(LOT.with("grafting_day", "next Monday"), draws);
    assertThat(newDay.take()).isCloseTo(fit.predict(LOT, draws).take(), within(0.02));
  }

  @Test
  void refuses_what_the_fit_does_not_know() {
    TakeFit fit = MODEL.fit(trial(3).cells());
    assertThatThrownBy(() -> fit.predict(LOT.with("rootstock", "R7")))
        .hasMessage("no rootstock \"R7\" in this fit; there are [R1, R2]");
    assertThatThrownBy(() -> fit.predict(LOT.with("moon", "full")))
        .hasMessage(
            "this fit knows nothing of moon; it knows of [storage_days, rootstock, cultivar,"
                + " grafting_day]");
    assertThatThrownBy(() -> fit.predict(LOT).count(0, 0.9))
        .hasMessage("grafts must be 1 or more, got 0");
  }
}
