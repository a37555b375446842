package org.taketally.answers.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Records;
import org.taketally.answers.Simulated;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.prediction.SecondOpinions.Opinion;
import org.taketally.answers.prediction.SecondOpinions.Way;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeModel;
import org.taketally.terms.Logit;
import org.taketally.wording.Wording;

class SecondOpinionsTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(400);
  private static final double[] CULTIVARS = {1.4, 1.0, 0.5, 0.2, -0.2, -0.5, -1.0, -1.4};
  private static final TakeModel MODEL =
      TakeModel.ofTakes()
          .adjustFor("storage_days", "rootstock")
          .varyBy("cultivar", "grafter", "season");

  private static Simulated simulated(int grafts, long seed) {
    return Simulated.grafts(grafts, 3, seed)
        .cultivars(CULTIVARS)
        .grafters(0.4, 0.1, -0.1, -0.4)
        .seasons(0.4, -0.3, 0.2, -0.3);
  }

  private static Opinion named(SecondOpinions answer, Way way) {
    return answer.opinions().stream().filter(o -> o.way() == way).findFirst().orElseThrow();
  }

  /** Truth: what the model assumes, so nothing can beat it by more than chance. */
  @Test
  void nothing_beats_the_model_that_made_the_records() {
    SecondOpinions answer =
        SecondOpinionsCalculator.of(MODEL, simulated(6000, 61).cells(), OPTIONS);
    assertThat(Wording.of(answer).headline())
        .startsWith("No other way of predicting tried does ")
        .contains(
            "on seasons not seen it gave what happened a typical chance of ",
            " %, the best other way, the ",
            "(6,000 grafts).")
        .contains("They put the cultivars in nearly the same order");
    Opinion model = answer.opinions().get(0);
    assertThat(model.way()).isEqualTo(Way.THIS_MODEL);
    assertThat(model.calibrationSlope()).isBetween(0.85, 1.2);
    Opinion plain = named(answer, Way.SAME_CHANCE);
    assertThat(model.logScore()).isGreaterThan(plain.logScore() + 0.05);
    assertThat(model.brier()).isLessThan(plain.brier());
    assertThat(plain.calibrationSlope()).isNaN();
    assertThat(named(answer, Way.FOREST).rankAgreement()).isGreaterThan(0.9);
    assertThat(named(answer, Way.RIDGE).rankAgreement()).isGreaterThan(0.95);
    assertThat(answer.subsampled()).isFalse();
    for (Opinion opinion : answer.opinions()) {
      long grafts = opinion.tenths().stream().mapToLong(t -> t.tally().grafts()).sum();
      assertThat(grafts).as(opinion.way().name()).isEqualTo(6000);
    }
    for (FitChecks.Tenth tenth : model.tenths()) {
      assertThat(tenth.predicted()).isCloseTo(tenth.tally().rate(), within(0.12));
    }
  }

  /** Truth: take depends on storage by a sharp hump the straight line can't follow. */
  @Test
  void the_forest_sees_a_hump_the_model_does_not_know() {
    Cells cells = simulated(6000, 62).bend(7, -0.08).cells();
    SecondOpinions answer = SecondOpinionsCalculator.of(MODEL, cells, OPTIONS);
    assertThat(Wording.of(answer).headline())
        .startsWith("The random forest predicts better than this model, so something moves take");
    assertThat(answer.importance().stream().limit(2).map(SecondOpinions.Importance::factor))
        .containsExactlyInAnyOrder("storage_days", "cultivar");
    assertThat(answer.importance().stream().mapToDouble(SecondOpinions.Importance::share).sum())
        .isCloseTo(1, within(1e-9));
    assertThat(answer.importance().stream().map(SecondOpinions.Importance::factor))
        .doesNotContain("season");
  }

  /** Log score and Brier score of four grafts by hand. */
  @Test
  void scores_agree_with_hand_calculation() {
    Cells cells = Records.of("season").row(3, 2, "2022").row(1, 0, "2023").cells();
    ForecastScores scores = new ForecastScores(cells, new double[] {0.8, 0.5});
    double log = (2 * Math.log(0.8) + Math.log(0.2) + Math.log(0.5)) / 4;
    assertThat(scores.logScore()).isCloseTo(log, within(1e-14));
    double brier = (2 * 0.04 + 0.64 + 0.25) / 4;
    assertThat(scores.brier()).isCloseTo(brier, within(1e-14));
  }

  /** Logits doubled: what happened is spread half as widely as predicted. */
  @Test
  void slope_tells_overstated_chances() {
    Simulated records = simulated(9000, 63);
    Cells cells = records.cells();
    double[] honest = Arrays.stream(records.logits()).map(Logit::take).toArray();
    double[] doubled = Arrays.stream(records.logits()).map(eta -> Logit.take(2 * eta)).toArray();
    double slope = new ForecastScores(cells, honest).calibrationSlope();
    assertThat(slope).isCloseTo(1, within(0.1));
    // the least chance, 0.005, cuts a few logits
    assertThat(new ForecastScores(cells, doubled).calibrationSlope())
        .isCloseTo(slope / 2, within(0.02));
  }

  /** Reference: the draws of the fit to the other seasons, each N(0, sd) by 2,000 even chances. */
  @Test
  void a_new_season_is_averaged_over_its_spread() {
    Cells cells = simulated(3000, 64).seasons(1.5, -1.5, 1.5, -1.5).cells();
    int[] season = cells.factor("season").codes();
    boolean[] held = new boolean[season.length];
    for (int i = 0; i < held.length; i++) {
      held[i] = season[i] == 3;
    }
    TakeModel plain = TakeModel.ofTakes().varyBy("season");
    double[] takes = new ModelForecaster(plain.fit(cells), OPTIONS).takes(held);
    TakeDraws draws = plain.fit(cells.where(i -> !held[i])).draws(200, OPTIONS.seed());
    NormalDistribution normal = NormalDistribution.of(0, 1);
    double expected =
        IntStream.range(0, 200 * 2000)
            .mapToDouble(
                k ->
                    Logit.take(
                        draws.beta(k / 2000)[0]
                            + draws.sds(k / 2000)[0]
                                * normal.inverseCumulativeProbability((k % 2000 + 0.5) / 2000)))
            .average()
            .orElseThrow();
    int cell = IntStream.range(0, held.length).filter(i -> held[i]).findFirst().orElseThrow();
    // five nodes for spreads of about 1.5 logits: errors below 0.003
    assertThat(takes[cell]).isCloseTo(expected, within(0.003));
  }

  @Test
  void is_the_same_each_time() {
    Cells cells = simulated(1500, 65).cells();
    SecondOpinions once = SecondOpinionsCalculator.of(MODEL, cells, OPTIONS);
    SecondOpinions twice = SecondOpinionsCalculator.of(MODEL, cells, OPTIONS);
    assertThat(Wording.of(twice).table().toCsv()).isEqualTo(Wording.of(once).table().toCsv());
    assertThat(twice.importance()).isEqualTo(once.importance());
  }

  /** Columns new in every season can't predict one not seen: they are left to the model alone. */
  @Test
  void leaves_out_columns_that_start_anew_each_season() {
    Cells cells = simulated(1500, 66).cells();
    int[] season = cells.factor("season").codes();
    int[] days = new int[season.length];
    for (int i = 0; i < days.length; i++) {
      days[i] = 10 * season[i] + i % 10;
    }
    List<String> names = IntStream.range(0, 40).mapToObj(d -> "day " + d).toList();
    Cells more = cells.with(new Factor("grafting_day", names, days));
    SecondOpinions answer =
        SecondOpinionsCalculator.of(MODEL.varyBy("grafting_day"), more, OPTIONS);
    assertThat(answer.importance().stream().map(SecondOpinions.Importance::factor))
        .containsExactlyInAnyOrder("storage_days", "rootstock", "cultivar", "grafter");
  }

  @Test
  void draws_whole_cells_evenly() {
    Cells cells = Simulated.grafts(60_000, 30, 67).cultivars(CULTIVARS).cells();
    Cells some = SecondOpinionsCalculator.some(cells, 1);
    assertThat(some.graftsTotal()).isBetween(18_000L, 22_000L);
    double share = (double) some.takesTotal() / some.graftsTotal();
    assertThat(share).isCloseTo((double) cells.takesTotal() / 60_000, within(0.03));
    assertThat(SecondOpinionsCalculator.some(cells, 1).takes()).isEqualTo(some.takes());
    assertThat(SecondOpinionsCalculator.some(cells, 2).takes()).isNotEqualTo(some.takes());
  }

  @Tag("slow")
  @Test
  void uses_a_part_of_large_records_and_says_so() {
    Cells cells = Simulated.grafts(60_000, 30, 67).cultivars(CULTIVARS).cells();
    SecondOpinions answer = SecondOpinionsCalculator.of(MODEL, cells, OPTIONS);
    assertThat(answer.subsampled()).isTrue();
    assertThat(answer.tally().grafts()).isBetween(18_000L, 22_000L);
    assertThat(Wording.of(answer).text())
        .contains("To save time, ", " drawn evenly from the records were used");
  }

  @Test
  void gives_a_reason_with_one_season() {
    Cells all = simulated(900, 68).cells();
    Factor season = all.factor("season");
    Cells one = all.where(i -> season.code(i) == 0);
    SecondOpinions answer = SecondOpinionsCalculator.of(MODEL, one, OPTIONS);
    assertThat(answer.opinions()).isEmpty();
    assertThat(Wording.of(answer).headline())
        .startsWith(
            "No second opinion: it takes two seasons or more to predict one from the others (");
    assertThat(Wording.of(answer).tables()).hasSize(3).allMatch(table -> table.rows().isEmpty());
  }
}
