package org.taketally.answers.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Condition;
import org.taketally.answers.Simulated;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.CheckKind;
import org.taketally.answers.checks.FitChecks.Quantile;
import org.taketally.answers.checks.FitChecks.SeasonInfluence;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.wording.Wording;

class FitChecksTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(400);
  private static final double[] CULTIVARS = {0.9, 0.6, 0.3, 0.1, -0.1, -0.3, -0.6, -0.9};
  private static final double[] HANDS = {0.6, 0.2, 0.0, -0.8};
  private static final TakeModel MODEL =
      TakeModel.ofTakes()
          .adjustForCurve("storage_days", 2)
          .adjustFor("grafter")
          .varyBy("cultivar", "season");

  private static Simulated simulated(int grafts, int each, long seed) {
    return Simulated.grafts(grafts, each, seed)
        .cultivars(CULTIVARS)
        .grafters(HANDS)
        .seasons(0.3, -0.2, 0.1, -0.2)
        .perDay(-0.08);
  }

  private static FitChecks checks(Cells cells) {
    return FitChecksCalculator.of(MODEL.fit(cells), OPTIONS);
  }

  private static Check check(FitChecks checks, CheckKind kind) {
    return checks.checks().stream().filter(c -> c.kind() == kind).findFirst().orElseThrow();
  }

  /** The model that made the records passes, whatever the size of its cells. */
  @Test
  void nothing_speaks_against_the_truth() {
    for (int each : List.of(1, 5, 30)) {
      FitChecks checks = checks(simulated(6000, each, 41 + each).cells());
      State scatter = each == 1 ? State.NOT_CHECKABLE : State.FINE;
      assertThat(checks.checks())
          .as("cells of " + each)
          .allMatch(
              c ->
                  c.state()
                      == (c.kind() == CheckKind.SCATTER_BETWEEN_CELLS ? scatter : State.FINE));
      assertThat(Wording.of(checks).headline())
          .isEqualTo(
              each == 1
                  ? "Nothing that can be checked speaks against the model; 4 checks on 6,000"
                      + " grafts, 1 more can't be made on them."
                  : "Nothing speaks against the model; 5 checks on 6,000 grafts.");
      for (Tenth tenth : checks.tenths()) {
        assertThat(tenth.predicted()).isCloseTo(tenth.tally().rate(), within(0.08));
      }
      assertThat(checks.tenths().stream().mapToLong(t -> t.tally().grafts()).sum()).isEqualTo(6000);
    }
  }

  /**
   * A level with one graft must not vouch for itself: with a varying factor of 1,500 levels of two
   * grafts, predictions from the fit itself would be far off in the outer tenths.
   */
  @Test
  void levels_of_few_grafts_do_not_vouch_for_themselves() {
    Cells plain = simulated(3000, 1, 43).scatter(1).cells();
    int[] pairs = new int[plain.size()];
    for (int i = 0; i < pairs.length; i++) {
      pairs[i] = i / 2;
    }
    List<String> names =
        java.util.stream.IntStream.range(0, 1500).mapToObj(i -> "lot " + i).toList();
    TakeFit fit = MODEL.varyBy("lot").fit(plain.with(new Factor("lot", names, pairs)));
    Check calibration = check(FitChecksCalculator.of(fit, OPTIONS), CheckKind.CALIBRATION);
    assertThat(calibration.value()).isLessThan(0.06);
    assertThat(calibration.state()).isEqualTo(State.FINE);
  }

  /** Truth: cells of 10 with a scatter of sd 0.8 between them, which the model doesn't know. */
  @Test
  void finds_scatter_the_model_does_not_know() {
    FitChecks checks = checks(simulated(6000, 10, 44).scatter(0.8).cells());
    Check scatter = check(checks, CheckKind.SCATTER_BETWEEN_CELLS);
    assertThat(scatter.state()).isEqualTo(State.WRONG);
    // about 1 + (n - 1) p q sd^2 with n = 10, p q = 0.2, sd^2 = 0.64
    assertThat(scatter.value()).isBetween(1.7, 2.6);
    assertThat(Wording.of(checks).text()).contains("let grafting day, batch or block vary");
    assertThat(check(checks, CheckKind.LEFT_OVER_SCATTER).state()).isNotEqualTo(State.FINE);
    assertThat(Wording.of(checks).headline())
        .startsWith("The model doesn't fit in every respect: ");
    assertThat(checks.checks().get(0).state()).isEqualTo(State.WRONG);
  }

  @Test
  void finds_takes_that_are_too_even() {
    Cells cells = simulated(6000, 10, 45).cells();
    double[] take = MODEL.fit(cells).fittedTake();
    int[] rounded = new int[take.length];
    for (int i = 0; i < take.length; i++) {
      rounded[i] = (int) Math.round(10 * take[i]);
    }
    FitChecks checks = checks(cells.withTakes(rounded));
    Check scatter = check(checks, CheckKind.SCATTER_BETWEEN_CELLS);
    assertThat(scatter.state()).isEqualTo(State.LOOK);
    assertThat(Wording.of(checks).text())
        .contains("Scatter between cells: takes are more even than chance allows (0.");
  }

  /** Residuals against the normal distribution they should have. */
  @Test
  void residuals_are_normal_and_repeatable() {
    Cells cells = simulated(6000, 3, 46).cells();
    FitChecks checks = checks(cells);
    assertThat(checks.residuals()).hasSize(99);
    for (Quantile q : checks.residuals().subList(4, 95)) {
      assertThat(q.found()).isCloseTo(q.expected(), within(0.15));
    }
    assertThat(checks(cells).residuals()).isEqualTo(checks.residuals());
  }

  /** Truth: the worst hand was best in 2025, so leaving 2025 out moves that contrast. */
  @Test
  void names_the_season_an_answer_leans_on() {
    Cells cells = simulated(6000, 3, 47).cells();
    int[] season = cells.factor("season").codes();
    int[] hand = cells.factor("grafter").codes();
    int[] takes = cells.takes().clone();
    for (int i = 0; i < takes.length; i++) {
      takes[i] = season[i] == 3 && hand[i] == 3 ? 3 : takes[i];
    }
    FitChecks checks = checks(cells.withTakes(takes));
    SeasonInfluence most = checks.seasons().get(0);
    assertThat(most.season()).isEqualTo("2025");
    assertThat(most.contrast().to().column()).isEqualTo("grafter");
    assertThat(most.contrast().to().level()).startsWith("grafter ");
    assertThat(most.contrast().from().level()).startsWith("grafter ");
    Check seasons = check(checks, CheckKind.SEASONS_LEFT_OUT);
    assertThat(seasons.state()).isEqualTo(State.LOOK);
    assertThat(Wording.of(checks).text())
        .contains("Seasons left out: leaving out 2025 (", " moves grafter (grafter ")
        .doesNotContain("Dagny", "Aldis");
  }

  /** The one step for large records against fitting again: same order, sizes within a fifth. */
  @Test
  void one_step_agrees_with_fitting_again() {
    TakeFit fit = MODEL.fit(simulated(6000, 3, 48).cells());
    Factor seasons = fit.cells().factor("season");
    List<FixedContrast> contrasts = FixedContrast.all(fit);
    for (int s = 0; s < 4; s++) {
      LeaveOneSeasonOut season = new LeaveOneSeasonOut(fit, contrasts, seasons, s);
      double[] again = season.shifts(true).orElseThrow();
      double[] step = season.shifts(false).orElseThrow();
      for (int c = 0; c < again.length; c++) {
        assertThat(step[c]).isCloseTo(again[c], within(0.15 + 0.2 * again[c]));
      }
    }
  }

  @Test
  void finds_a_lost_lot() {
    Cells cells = simulated(6000, 20, 49).cells();
    int[] takes = cells.takes().clone();
    takes[7] = 0;
    FitChecks checks = checks(cells.withTakes(takes));
    assertThat(checks.extremes()).hasSize(1);
    assertThat(checks.extremes().get(0).tally().grafts()).isEqualTo(20);
    assertThat(checks.extremes().get(0).conditions().stream().map(Condition::column))
        .contains("cultivar", "storage_days", "grafter");
    assertThat(check(checks, CheckKind.NONE_OR_ALL_TAKEN).state()).isEqualTo(State.LOOK);
    assertThat(Wording.of(checks).text())
        .contains("Cells with none or all taken: 1 cell where that was very unlikely; first: ")
        .contains(", 0 takes of 20 grafts where about ");
    assertThat(Wording.of(checks).text()).doesNotContain("Aldis", "Berit", "Caspar", "Dagny");
  }

  @Test
  void works_with_one_season_and_nothing_to_adjust_for() {
    Cells all = simulated(900, 3, 50).cells();
    Factor season = all.factor("season");
    Cells one = all.where(i -> season.code(i) == 0);
    FitChecks checks =
        FitChecksCalculator.of(TakeModel.ofTakes().varyBy("cultivar").fit(one), OPTIONS);
    assertThat(checks.seasons()).isEmpty();
    assertThat(check(checks, CheckKind.SEASONS_LEFT_OUT).finding())
        .isEqualTo(FitChecks.SeasonsUntried.NOTHING_TO_TRY);
    assertThat(Wording.of(checks).tables()).hasSize(2);
    assertThat(Wording.of(checks).text()).isNotBlank();
  }
}
