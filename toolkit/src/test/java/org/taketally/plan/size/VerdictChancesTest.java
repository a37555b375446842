package org.taketally.plan.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.plan.layout.LayoutPlan;
import org.taketally.plan.layout.PlannedCells;
import org.taketally.plan.layout.TrialLayout;

class VerdictChancesTest {

  static Cells trial(int grafts, int days) {
    return PlannedCells.of(
        TrialLayout.of(
            LayoutPlan.of(
                    List.of("Orrin", "Tamsel", "Brask"),
                    List.of("A", "B"),
                    List.of("GR-1", "GR-2"),
                    IntStream.rangeClosed(1, days).mapToObj(d -> "day " + d).toList())
                .withGraftsPerPlot(grafts)));
  }

  private static VerdictChances chances(Cells trial, double first, double second, int trials) {
    return VerdictChances.of(
        trial,
        new VerdictChances.Settings(
            new TrialTruth(Map.of("A", first, "B", second), TrialTruth.USUAL_SPREADS),
            AnswerOptions.defaults().withDraws(200),
            trials,
            done -> {}));
  }

  @Test
  void a_large_gap_in_a_large_trial_is_found_and_none_in_a_small_one_isnt_settled() {
    VerdictChances large = chances(trial(10, 5), 0.85, 0.5, 10);
    assertThat(large.chance(Verdict.MATTERS)).isGreaterThan(0.8);
    VerdictChances small = chances(trial(2, 2), 0.75, 0.75, 10);
    assertThat(small.chance(Verdict.CANT_TELL_YET)).isGreaterThan(0.6);
    assertThat(small.settled()).isLessThan(0.4);
  }

  @Test
  void the_same_seed_gives_the_same_chances() {
    Cells trial = trial(3, 2);
    assertThat(chances(trial, 0.8, 0.6, 3)).isEqualTo(chances(trial, 0.8, 0.6, 3));
  }

  @Test
  void takes_average_to_what_is_supposed() {
    Cells trial = trial(5, 6);
    SimulatedTakes takes =
        new SimulatedTakes(
            trial, new TrialTruth(Map.of("A", 0.9, "B", 0.6), TrialTruth.USUAL_SPREADS));
    double taken = 0;
    for (int i = 0; i < 2000; i++) {
      taken += takes.draw(i).takesTotal();
    }
    assertThat(taken / 2000 / trial.graftsTotal()).isCloseTo(0.75, within(0.01));
  }
}
