package org.taketally.answers.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Published values: see SurvivalChecks. */
class LossTimesTest {

  /** Times drawn from a known shape and scale come back: 20,000 grafts, seed 4. */
  @Test
  void finds_the_shape_and_scale_times_were_drawn_from() {
    Random random = new Random(4);
    List<FollowUp> grafts = new ArrayList<>();
    for (int i = 0; i < 20_000; i++) {
      double days = 80 * Math.pow(-Math.log(random.nextDouble()), 1 / 0.7);
      grafts.add(days < 120 ? FollowUp.lostAt(days) : FollowUp.aliveAt(120));
    }
    LossTimes times = LossTimes.of(List.of(Watched.of("Linnock", grafts)));
    // Three standard errors are about 0.016 and 3.
    assertThat(times.shape()).isCloseTo(0.7, within(0.016));
    assertThat(times.lots().get(0).scaleDays()).isCloseTo(80, within(3.0));
  }

  @Test
  void counting_days_in_weeks_changes_the_scale_alone() {
    LossTimes days = LossTimes.of(List.of(Watched.of("Linnock", grafts(1))));
    LossTimes weeks = LossTimes.of(List.of(Watched.of("Linnock", grafts(1 / 7.0))));
    assertThat(weeks.shape()).isCloseTo(days.shape(), within(1e-9));
    assertThat(weeks.lots().get(0).scaleDays() * 7)
        .isCloseTo(days.lots().get(0).scaleDays(), within(1e-8));
  }

  private static List<FollowUp> grafts(double unit) {
    return List.of(
        new FollowUp(30 * unit, true, 4),
        new FollowUp(60 * unit, true, 2),
        new FollowUp(90 * unit, false, 10));
  }

  @Test
  void a_lot_counts_as_its_grafts_one_by_one() {
    List<FollowUp> single = new ArrayList<>();
    grafts(1).forEach(g -> single.addAll(repeat(g)));
    assertThat(LossTimes.of(List.of(Watched.of("Linnock", single))).shape())
        .isCloseTo(LossTimes.of(List.of(Watched.of("Linnock", grafts(1)))).shape(), within(1e-10));
  }

  private static List<FollowUp> repeat(FollowUp graft) {
    return java.util.Collections.nCopies(
        (int) graft.grafts(), new FollowUp(graft.days(), graft.lost(), 1));
  }

  @Test
  void refuses_what_has_no_answer() {
    assertThatThrownBy(
            () -> LossTimes.of(List.of(Watched.of("Linnock", List.of(FollowUp.aliveAt(5))))))
        .hasMessage("no times of loss: none of Linnock was lost");
    assertThatThrownBy(
            () -> LossTimes.of(List.of(Watched.of("Linnock", List.of(FollowUp.lostAt(5))))))
        .hasMessage(
            "no times of loss: all were lost after as many days, so the danger has no shape");
    assertThatThrownBy(
            () -> LossTimes.of(List.of(Watched.of("Linnock", List.of(FollowUp.lostAt(0))))))
        .hasMessage("times of loss need more than 0 days of watching for each graft of Linnock");
  }
}
