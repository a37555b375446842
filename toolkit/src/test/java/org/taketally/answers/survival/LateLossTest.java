package org.taketally.answers.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.DemoCounts;
import org.taketally.answers.survival.CountedRow.Count;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;
import org.taketally.answers.survival.LateLoss.Round;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** By hand on a few rows, and against the known truth of the invented data sets. */
class LateLossTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults();

  /** Alternating days and counts. */
  private static CountedRow row(String name, String rootstock, long grafts, long... dayAlive) {
    List<Count> counts =
        IntStream.range(0, dayAlive.length / 2)
            .mapToObj(i -> new Count(dayAlive[2 * i], dayAlive[2 * i + 1]))
            .toList();
    return new CountedRow(name, Map.of("rootstock", rootstock), grafts, counts);
  }

  private static final List<CountedRow> ROWS =
      List.of(
          row("1", "Ostrey", 20, 30, 10, 60, 16, 95, 12),
          row("2", "Pellin", 20, 30, 18, 60, 15, 95, 15),
          row("3", "Pellin", 10, 32, 8, 58, 6, 93, 5),
          row("4", "Ostrey", 10, 31, 0, 60, 0, 95, 0),
          row("5", "Pellin", 7, 35, 5));

  private static LateLoss answer() {
    return LateLossCalculator.of(ROWS, List.of("rootstock"), OPTIONS).orElseThrow();
  }

  @Test
  void early_take_final_take_and_late_loss_are_kept_apart() {
    LevelLoss all = answer().all();
    assertThat(all.early().takes()).isEqualTo(36);
    assertThat(all.early().grafts()).isEqualTo(60);
    assertThat(all.last().takes()).isEqualTo(32);
    // row 1: 16 of 20 were alive on day 60, so 6 of them unseen on day 30
    assertThat(all.lateStarters()).isEqualTo(6);
    // row 1 lost 4, row 2 lost 3, row 3 lost 2 and 1
    assertThat(all.lost()).isEqualTo(10);
    assertThat(all.onceAlive()).isEqualTo(42);
    assertThat(answer().countedOnce()).isEqualTo(7);
    // 5 of 36 watched in the first round, 5 of 37 in the second, the late starters from then on
    assertThat(all.lateLoss().value()).isCloseTo(1 - 31 / 36.0 * 32 / 37, within(1e-14));
  }

  @Test
  void numbers_reconcile_for_every_level() {
    for (FactorLoss factor : answer().factors()) {
      for (LevelLoss level : factor.levels()) {
        assertThat(level.early().takes() + level.lateStarters() - level.lost())
            .isEqualTo(level.last().takes());
      }
      assertThat(factor.levels().stream().mapToLong(LevelLoss::lost).sum())
          .isEqualTo(answer().all().lost());
    }
  }

  /** By hand: 5 of 36 found lost in the first round, 5 of 37 in the second. */
  @Test
  void curve_goes_by_rounds_of_counts() {
    assertThat(answer().rounds()).containsExactly(new Round(26, 30, 29), new Round(61, 65, 64));
    assertThat(answer().roundsApart()).isTrue();
    List<Double> alive = answer().all().curve().steps().stream().map(step -> step.alive()).toList();
    assertThat(alive.get(0)).isCloseTo(31 / 36.0, within(1e-14));
    assertThat(alive.get(1)).isCloseTo(31 / 36.0 * 32 / 37, within(1e-14));
  }

  /**
   * Counted as watched from the start, they would make every loss before they started look rare.
   */
  @Test
  void late_starters_are_watched_from_when_they_were_first_seen_alive() {
    List<CountedRow> rows =
        List.of(
            row("1", "A", 1, 30, 1, 60, 0, 90, 0),
            row("2", "A", 1, 30, 1, 60, 1, 90, 1),
            row("3", "A", 1, 30, 0, 60, 1, 90, 1),
            row("4", "A", 1, 30, 0, 60, 1, 90, 1));
    LevelLoss all = LateLossCalculator.of(rows, List.of("rootstock"), OPTIONS).orElseThrow().all();
    assertThat(all.lateStarters()).isEqualTo(2);
    assertThat(all.curve().steps().get(0).atRisk()).isEqualTo(2);
    assertThat(all.lateLoss().value()).isCloseTo(0.5, within(1e-14));
    assertThat(all.hiddenAtMost()).isZero();
  }

  @Test
  void a_graft_overlooked_once_was_neither_lost_nor_late() {
    List<CountedRow> rows =
        List.of(row("1", "A", 10, 30, 5, 60, 3, 90, 4), row("2", "A", 10, 30, 4, 60, 6, 90, 6));
    LevelLoss all = LateLossCalculator.of(rows, List.of("rootstock"), OPTIONS).orElseThrow().all();
    assertThat(all.lost()).isEqualTo(1);
    assertThat(all.lateStarters()).isEqualTo(2);
    // 5 and 6 of 10 seen alive at once
    assertThat(all.hiddenAtMost()).isEqualTo(9);
    assertThat(all.curve().steps().get(0).atRisk()).isEqualTo(9);
  }

  /** 20 rows of 10, of which whole rows die on either stock: 100 of 200 say little. */
  @Test
  void rows_that_die_together_count_as_so_many_rows() {
    List<CountedRow> together =
        IntStream.range(0, 20)
            .mapToObj(
                i ->
                    row(
                        "r" + i,
                        i < 10 ? "A" : "B",
                        10,
                        30,
                        10,
                        90,
                        i % 10 < (i < 10 ? 4 : 6) ? 0 : 10))
            .toList();
    List<CountedRow> oneByOne =
        IntStream.range(0, 20)
            .mapToObj(i -> row("r" + i, i < 10 ? "A" : "B", 10, 30, 10, 90, i < 10 ? 6 : 4))
            .toList();
    LateLoss rows = LateLossCalculator.of(together, List.of("rootstock"), OPTIONS).orElseThrow();
    LateLoss grafts = LateLossCalculator.of(oneByOne, List.of("rootstock"), OPTIONS).orElseThrow();
    assertThat(rows.all().lateLoss().value())
        .isCloseTo(grafts.all().lateLoss().value(), within(1e-12));
    assertThat(grafts.dispersion()).isEqualTo(1);
    assertThat(rows.dispersion()).isCloseTo(10 * 10 / 9.0, within(1e-9));
    assertThat(grafts.factors().get(0).differ()).isTrue();
    assertThat(rows.factors().get(0).differ()).isFalse();
    assertThat(rows.all().lateLoss().interval().width())
        .isGreaterThan(3 * grafts.all().lateLoss().interval().width());
    assertThat(rows.factors().get(0).levels().get(0).timesAsFast().orElseThrow().low())
        .isLessThan(1);
    assertThat(Wording.of(rows).text())
        .contains("Grafts of one row often died together: ranges are about 3.3 times as wide");
  }

  /** A bad season that a stock was mostly used in is not the stock's doing. */
  @Test
  void stocks_are_compared_within_seasons() {
    List<CountedRow> rows = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      boolean bad = i < 100;
      boolean stockB = bad ? i % 5 > 0 : i % 5 == 0;
      boolean lost = bad ? i % 2 == 0 : i % 10 == 3;
      rows.add(
          new CountedRow(
              "r" + i,
              Map.of("rootstock", stockB ? "B" : "A", "season", bad ? "2021" : "2022"),
              1,
              List.of(new Count(30, 1), new Count(90, lost ? 0 : 1))));
    }
    FactorLoss factor =
        LateLossCalculator.of(rows, List.of("rootstock"), OPTIONS).orElseThrow().factors().get(0);
    assertThat(factor.within()).containsExactly("season");
    assertThat(factor.testedWithin()).containsExactly("season");
    assertThat(factor.plainTest().orElseThrow().pValue()).isLessThan(0.01);
    assertThat(factor.differ()).isFalse();
  }

  /** Days differ from row to row; dated to the day, the early counted would seem lost sooner. */
  @Test
  void counting_days_of_one_round_do_not_bias_the_share_lost() {
    List<CountedRow> rows =
        List.of(
            row("1", "A", 50, 30, 50, 85, 40),
            row("2", "A", 50, 30, 50, 90, 40),
            row("3", "A", 50, 30, 50, 95, 40));
    LateLoss answer = LateLossCalculator.of(rows, List.of("rootstock"), OPTIONS).orElseThrow();
    assertThat(answer.all().lateLoss().value()).isCloseTo(0.2, within(1e-14));
    assertThat(answer.factors()).isEmpty();
  }

  @Test
  void counts_without_rounds_go_by_their_order_and_are_said_to_be_rough() {
    List<CountedRow> rows =
        List.of(
            row("1", "A", 50, 30, 50, 36, 45, 42, 40),
            row("2", "B", 50, 30, 50, 39, 48, 46, 44, 52, 44));
    LateLoss answer = LateLossCalculator.of(rows, List.of("rootstock"), OPTIONS).orElseThrow();
    assertThat(answer.roundsApart()).isFalse();
    assertThat(answer.rounds()).hasSize(3);
    assertThat(Wording.of(answer).text())
        .contains("Counts were not made in rounds, so the share lost by a given day is rough.");
  }

  @Test
  void a_slow_stock_is_named_and_judged_by_its_final_take() {
    assertThat(Wording.of(answer()).text())
        .contains(
            "Ostrey starts slowly: 6 of its 16 living grafts were not seen alive at the first"
                + " count. Judge it by the final take (40 %), not the early one (33 %).")
        .contains("7 grafts in rows counted only once are left out.");
  }

  @Test
  void nothing_to_say_without_a_second_count() {
    assertThat(LateLossCalculator.of(List.of(ROWS.get(4)), List.of("rootstock"), OPTIONS))
        .isEmpty();
    assertThat(LateLossCalculator.of(List.of(ROWS.get(3)), List.of("rootstock"), OPTIONS))
        .isEmpty();
    assertThat(LateLossCalculator.of(List.of(), List.of("rootstock"), OPTIONS)).isEmpty();
  }

  @Test
  void no_loss_at_all_still_says_how_sure() {
    List<CountedRow> rows =
        List.of(row("1", "A", 10, 30, 8, 90, 8), row("2", "B", 10, 30, 7, 90, 7));
    LateLoss answer = LateLossCalculator.of(rows, List.of("rootstock"), OPTIONS).orElseThrow();
    assertThat(answer.all().lateLoss().value()).isZero();
    // upper Wilson limit of 0 of 15
    assertThat(answer.all().lateLoss().high()).isCloseTo(0.2039, within(1e-4));
    assertThat(answer.factors().get(0).test()).isEmpty();
    assertThat(answer.factors().get(0).levels())
        .allSatisfy(level -> assertThat(level.timesAsFast()).isEmpty());
  }

  /** Ratios go to the base only; a level without losses has none, and does not spoil the others. */
  @Test
  void levels_without_losses_get_no_ratio() {
    List<CountedRow> rows =
        List.of(
            row("1", "A", 60, 30, 50, 90, 40),
            row("2", "B", 40, 30, 30, 90, 15),
            row("3", "C", 40, 30, 30, 90, 30));
    FactorLoss factor =
        LateLossCalculator.of(rows, List.of("rootstock"), OPTIONS).orElseThrow().factors().get(0);
    assertThat(factor.base()).isEqualTo("A");
    assertThat(factor.levels()).extracting(LevelLoss::name).containsExactly("B", "A", "C");
    // by hand: log(1 - 15/30) / log(1 - 10/50)
    assertThat(factor.levels().get(0).timesAsFast().orElseThrow().value())
        .isCloseTo(Math.log(0.5) / Math.log(0.8), within(1e-9));
    assertThat(factor.levels().get(1).timesAsFast()).isEmpty();
    assertThat(factor.levels().get(2).timesAsFast()).isEmpty();
    assertThat(factor.differ()).isTrue();
  }

  /**
   * Truth of the avocado set: rootstocks are lost alike, one starts slowly; weak stocks lose more.
   */
  @Test
  void avocado_set_tells_its_story() throws IOException {
    LateLoss answer = DemoCounts.lateLoss("halden-bay-avocado").orElseThrow();
    FactorLoss rootstock = answer.factors().get(0);
    assertThat(rootstock.differ()).isFalse();
    assertThat(Wording.of(answer).headline())
        .contains("; on Ostrey grafts start slowly: go by the final take");
    assertThat(rootstock.levels())
        .allSatisfy(
            level ->
                level
                    .timesAsFast()
                    .ifPresent(times -> assertThat(times.interval().contains(1)).isTrue()));
    FactorLoss condition = answer.factors().get(1);
    assertThat(condition.differ()).isTrue();
    assertThat(condition.levels().get(0).name()).isEqualTo("weak");
    assertThat(answer.all().early().takes()).isEqualTo(3623);
    assertThat(answer.all().last().takes()).isEqualTo(2996);
    assertThat(Wording.of(answer).text())
        .contains("Ostrey starts slowly", "go by the final take")
        .doesNotContain("Quarry seedling starts slowly");
  }

  /** Truth of the walnut set: one rootstock is bad. */
  @Test
  void walnut_set_names_its_bad_stock() throws IOException {
    LateLoss answer = DemoCounts.lateLoss("halden-bay-walnut").orElseThrow();
    FactorLoss rootstock = answer.factors().get(0);
    assertThat(rootstock.differ()).isTrue();
    assertThat(rootstock.levels().get(0).name()).isEqualTo("Greyshell seedling");
    assertThat(
            rootstock.levels().stream()
                .filter(level -> level.timesAsFast().map(times -> times.low() > 1).orElse(false)))
        .hasSize(1);
    assertThat(Wording.of(answer).headline())
        .isEqualTo(
            "Early take %s, final take %s: of 2,166 grafts once alive, about 25 %% (likely 23 to 27 %%)"
                    .formatted(
                        Words.percent(answer.all().early().rate()),
                        Words.percent(answer.all().last().rate()))
                + " were lost by 56 days after the first count.");
    assertThat(Wording.of(answer).text())
        .contains(
            "Rootstock: as counted, late loss ran from 20 % (Kettlewick) to 47 % (Greyshell"
                + " seedling). That is more than chance would part them, season, site, stock"
                + " condition and cultivar allowed for; lost fastest: Greyshell seedling (2.4 times"
                + " as fast as Lowmoor seedling, likely 1.9 to 3.2).");
  }

  @Test
  void tables_hold_every_level_and_round() {
    List<AnswerTable> tables = Wording.of(answer()).tables();
    assertThat(tables)
        .extracting(AnswerTable::name)
        .containsExactly("late-loss", "late-loss-curves", "late-loss-tests");
    assertThat(tables.get(0).rows()).hasSize(3);
    assertThat(tables.get(1).rows()).hasSize(6);
    assertThat(tables.get(2).rows()).hasSize(1);
    assertThat(tables.get(0).toCsv()).startsWith("factor,level,grafts,early_take,");
  }

  @Test
  void refuses_impossible_rows() {
    assertThatThrownBy(() -> row("17", "A", 5, 30, 6))
        .hasMessage("record 17, day 30: alive must be 0 to 5 (grafts), got 6");
    assertThatThrownBy(() -> row("17", "A", 5, 30, 4, 30, 3))
        .hasMessage("record 17: days of its counts must rise from 0, got 30 after 30");
    assertThatThrownBy(() -> row("17", "A", 5)).hasMessage("record 17 has no count");
  }
}
