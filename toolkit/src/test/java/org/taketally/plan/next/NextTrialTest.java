package org.taketally.plan.next;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.verdict.Verdict;
import org.taketally.plan.next.NextTrial.State;
import org.taketally.plan.next.SettlingChance.Stock;
import org.taketally.plan.size.VerdictChances;
import org.taketally.records.GraftRecords;
import org.taketally.wording.NextTrialWords;

/** What to graft next. */
class NextTrialTest {

  @TempDir private Path folder;

  private static NextTrialPlanner.Settings settings(int trials) {
    return settings(trials, 400);
  }

  private static NextTrialPlanner.Settings settings(int trials, int most) {
    return new NextTrialPlanner.Settings(
        AnswerOptions.defaults().withDraws(300),
        List.of(),
        List.of("day 1", "day 2"),
        3,
        most,
        0.8,
        trials);
  }

  /** Grafts of four cultivars on two stocks, each cultivar on one stock only if {@code apart}. */
  private GraftRecords records(boolean apart) throws IOException {
    Random random = new Random(5);
    StringBuilder sheet = new StringBuilder("cultivar,rootstock,grafter,graft_date,outcome\n");
    for (int i = 0; i < 160; i++) {
      int cultivar = random.nextInt(4);
      int stock = apart ? cultivar / 2 : random.nextInt(2);
      sheet.append(
          "C%d,R%d,GR-%d,2026-03-%02d,%s%n"
              .formatted(
                  cultivar,
                  stock,
                  apart ? stock : random.nextInt(2),
                  1 + (apart ? 10 * stock : 0) + random.nextInt(6),
                  random.nextDouble() < 0.6 ? "taken" : "failed"));
    }
    return GraftRecords.read(Files.writeString(folder.resolve("r" + apart + ".csv"), sheet));
  }

  @Test
  void an_open_verdict_ends_in_a_layout_of_the_open_pairs() throws IOException {
    NextTrial next = NextTrialPlanner.of(records(false), settings(4));
    assertThat(next.now().verdict()).isIn(Verdict.CANT_TELL_YET, Verdict.DIFFERS_UNSETTLED);
    assertThat(next.open()).hasSize(1);
    assertThat(next.layout().orElseThrow().grafts()).isBetween(20L, 400L);
    assertThat(next.layout().orElseThrow().plan().rootstocks())
        .containsExactlyInAnyOrder("R0", "R1");
    assertThat(next.after().orElseThrow().trials()).isEqualTo(4);
    assertThat(NextTrialWords.of(next).headline()).contains("Add ", "side by side");
    assertThat(String.join(" ", NextTrialWords.of(next).more())).contains("Not settled yet: ");
    NextTrial again = NextTrialPlanner.of(records(false), settings(4));
    assertThat(again.layout()).isEqualTo(next.layout());
    assertThat(again.after()).isEqualTo(next.after());
  }

  /** Two stocks on three cultivars by two hands on two days are 24 plots. */
  @Test
  void there_are_never_more_grafts_than_there_can_be() throws IOException {
    for (int most : new int[] {24, 47, 71, 100}) {
      NextTrial next = NextTrialPlanner.of(records(false), settings(2, most));
      assertThat(next.layout().orElseThrow().grafts())
          .as("at most %d", most)
          .isEqualTo(most / 24 * 24L);
    }
    GraftRecords records = records(false);
    assertThatThrownBy(() -> NextTrialPlanner.of(records, settings(2, 23)))
        .hasMessageContaining(
            "--most: found 23, expected 24 grafts or more, one a plot: 3 cultivars on 2 rootstocks, by 2 hands, on 2 days");
  }

  @Test
  void what_is_said_of_the_chance_is_what_grafts_made_up_give() throws IOException {
    for (int most : new int[] {48, 2_000}) {
      NextTrial next = NextTrialPlanner.of(records(false), settings(8, most));
      double settled = next.after().orElseThrow().settled();
      assertThat(next.state() == State.OUT_OF_REACH).isEqualTo(settled < 0.5);
      String said = NextTrialWords.of(next).headline() + NextTrialWords.of(next).more();
      boolean short80 = said.contains("You asked for a chance of 80 %: these are as many");
      assertThat(said.contains("Even ") || short80)
          .as("%s of %s", settled, next.layout())
          .isEqualTo(next.fallsShort());
      if (next.fallsShort()) {
        assertThat(next.layout().orElseThrow().grafts()).isGreaterThan(most - 24L);
      }
    }
    assertThat(NextTrialPlanner.of(records(false), settings(8, 48)).fallsShort()).isTrue();
  }

  @Test
  void a_chance_as_high_as_the_one_wanted_is_in_reach_however_low() {
    VerdictChances third = chances(14, 40);
    assertThat(NextTrial.outOfReach(third, 0.30)).isFalse();
    assertThat(NextTrial.outOfReach(third, 0.45)).isFalse();
    assertThat(NextTrial.outOfReach(third, 0.80)).isTrue();
    assertThat(NextTrial.outOfReach(chances(24, 40), 0.80)).isFalse();
  }

  @Test
  void a_chance_below_the_one_wanted_by_no_more_than_it_may_be_off_is_said() throws IOException {
    NextTrial tried = NextTrialPlanner.of(records(false), settings(8, 48));
    for (double wanted : new double[] {0.30, 0.45, 0.80}) {
      NextTrial next =
          new NextTrial(
              tried.now(),
              State.MORE_GRAFTS,
              tried.open(),
              tried.layout(),
              tried.reckoned(),
              wanted,
              Optional.of(chances(14, 40)));
      assertThat(next.perhapsShort()).isEqualTo(wanted == 0.45);
      assertThat(String.join(" ", NextTrialWords.of(next).more()))
          .as("15.08 points")
          .contains("That is rough: --trials 45 brings it to within 15 points.");
      assertThat(String.join(" ", NextTrialWords.of(next).more()).contains("by no more than it"))
          .isEqualTo(wanted == 0.45);
    }
  }

  private static VerdictChances chances(int settled, int trials) {
    return new VerdictChances(
        Map.of(Verdict.NO_PRACTICAL_DIFFERENCE, settled, Verdict.CANT_TELL_YET, trials - settled),
        0,
        trials);
  }

  @Test
  void entangled_stocks_are_bridged_on_one_groups_cultivars() throws IOException {
    NextTrial next = NextTrialPlanner.of(records(true), settings(2));
    assertThat(next.state()).isEqualTo(State.BRIDGE);
    assertThat(next.open()).hasSize(1);
    assertThat(next.layout().orElseThrow().plan().rootstocks()).hasSize(2);
    assertThat(next.layout().orElseThrow().plan().cultivars())
        .isSubsetOf("C0", "C1", "C2", "C3")
        .hasSizeLessThanOrEqualTo(2);
    assertThat(next.after().orElseThrow().chance(Verdict.ENTANGLED)).isZero();
    assertThat(NextTrialWords.of(next).headline()).contains("bridging grafts come first");
  }

  @Test
  void more_grafts_settle_more_surely_unless_the_difference_is_the_margin_itself() {
    SettlingChance alike = two(0, 0.06);
    assertThat(alike.with(50)).isLessThan(alike.with(400));
    assertThat(two(0, 0.01).with(1_000_000)).isGreaterThan(0.99);
    assertThat(two(0.1, 1e-4).with(1_000)).isLessThan(0.1);
    assertThat(two(0.4, 0.05).with(100)).isGreaterThan(0.99);
    assertThat(new SettlingChance(Collections.nCopies(6, new Stock(0.6, 0.04)), 0.6, 0.1).with(400))
        .isLessThan(two(0, 0.06).with(400));
    assertThat(alike.fewest(0.8, 10, 100_000)).isBetween(100, 5_000);
  }

  private static SettlingChance two(double apart, double error) {
    double each = error / Math.sqrt(2);
    return new SettlingChance(
        List.of(new Stock(0.6, each), new Stock(0.6 - apart, each)), 0.6, 0.1);
  }

  @Test
  void nonsense_is_refused() throws IOException {
    assertThatThrownBy(
            () ->
                new NextTrialPlanner.Settings(
                    AnswerOptions.defaults(), List.of(), List.of("d"), 3, 400, 1.2, 0))
        .hasMessageContaining("between 0 and 1, e.g. 0.8");
    GraftRecords one = records(false).where("rootstock", "R0");
    assertThatThrownBy(() -> NextTrialPlanner.of(one, settings(1)))
        .hasMessageContaining("fewer than two rootstocks");
  }
}
