package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.compare.LikelihoodRatioTest;
import org.taketally.model.compare.Profiles;
import org.taketally.model.laplace.LikelihoodPoint;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.laplace.Patterns;
import org.taketally.terms.Provenance;

/** What a fit is told and tells beside its numbers, on one small set of records. */
class ModelRulesTest {

  private static final int[] STOCK = {0, 0, 1, 1, 0, 1, 0, 1, 1, 0, 1, 1};
  private static final int[] DAY = {0, 0, 0, 1, 1, 1, 2, 2, 3, 3, 4, 5};
  private static final int[] TAKES = {9, 6, 8, 4, 5, 6, 9, 8, 2, 3, 7, 6};
  private static final Cells RECORDS = records(6, DAY);

  private static Cells records(int days, int[] day) {
    int[] grafts = IntStream.range(0, 12).map(i -> 10).toArray();
    return new Cells(
        List.of(
            new Factor("rootstock", List.of("R1", "R2"), STOCK),
            new Factor(
                "grafting_day", IntStream.range(0, days).mapToObj(d -> "D" + d).toList(), day)),
        List.of(
            new Measure("storage_days", IntStream.range(0, 12).mapToDouble(i -> i % 4).toArray()),
            new Measure("height", IntStream.range(0, 12).mapToDouble(i -> 30).toArray())),
        grafts,
        TAKES,
        0,
        Provenance.of("typed in", 12));
  }

  private static final TakeModel STOCKS = TakeModel.ofTakes().compare("rootstock");

  private static List<FitWarning.Kind> warned(TakeModel model, Cells cells) {
    return model.fit(cells).warnings().stream().map(FitWarning::kind).toList();
  }

  @Test
  void few_levels_are_warned_of_below_five() {
    TakeModel days = TakeModel.ofTakes().varyBy("grafting_day");
    int[] four = IntStream.of(DAY).map(d -> d % 4).toArray();
    int[] five = IntStream.of(DAY).map(d -> d % 5).toArray();
    assertThat(warned(days, records(4, four))).contains(FitWarning.Kind.FEW_LEVELS);
    assertThat(warned(days, records(5, five))).doesNotContain(FitWarning.Kind.FEW_LEVELS);
  }

  @Test
  void a_number_that_is_always_the_same_is_left_out_and_said_so() {
    TakeFit fit = TakeModel.ofTakes().adjustFor("height").fit(RECORDS);
    assertThat(fit.beta()).hasSize(1);
    assertThat(fit.warnings())
        .filteredOn(warning -> warning.kind() == FitWarning.Kind.ONE_LEVEL)
        .extracting(FitWarning::column)
        .containsExactly("height");
  }

  @Test
  void effects_are_named_by_term_and_level_alone_or_together() {
    TakeFit fit = STOCKS.adjustFor("storage_days").fit(RECORDS);
    assertThat(fit.fixed())
        .extracting(FixedEffect::name)
        .containsExactlyInAnyOrder("intercept", "storage_days", "rootstock: R2");
  }

  @Test
  void a_model_says_what_it_compares_and_with_which_base() {
    TakeModel model = STOCKS.base("rootstock", "R2");
    assertThat(model.bases()).containsOnly(java.util.Map.entry("rootstock", "R2"));
    assertThat(model.compared()).contains("rootstock");
    assertThat(TakeModel.ofTakes().compared()).isEmpty();
    double turned = model.fit(RECORDS).beta()[1];
    assertThat(STOCKS.fit(RECORDS).beta()[1]).isCloseTo(-turned, within(1e-6));
  }

  @Test
  void every_step_of_the_search_is_told() {
    List<SearchStep> told = new ArrayList<>();
    STOCKS
        .varyBy("grafting_day")
        .fit(RECORDS, FitOptions.defaults().withThreads(1).withProgress(told::add));
    assertThat(told).isNotEmpty();
    assertThat(told.get(0).step()).isZero();
  }

  @Test
  void spreads_of_deviations_are_the_same_one_by_one_and_together() {
    VaryingFactor days = STOCKS.varyBy("grafting_day").fit(RECORDS).varying("grafting_day");
    for (int level = 0; level < days.levels().size(); level++) {
      assertThat(days.levelEffectSd(level)).isEqualTo(days.levelEffectSds()[level]).isPositive();
    }
  }

  @Test
  void nothing_is_compared_within_groups_unless_asked_for() {
    assertThat(STOCKS.fit(RECORDS).within()).isEmpty();
    assertThat(STOCKS.varyBy("grafting_day").fit(RECORDS).within()).isEmpty();
  }

  /** Days are mixed, so the shares enter; what is across is the sum of two effects. */
  @Test
  void across_groups_the_difference_is_the_sum_of_two_effects_and_so_is_its_error() {
    TakeFit fit = STOCKS.compareWithin("grafting_day").fit(RECORDS);
    WithinComparison compared = fit.within().orElseThrow();
    assertThat(compared.unused()).isEmpty();
    WithinComparison.Across across = compared.across().get(0);
    double[] beta = fit.beta();
    double[][] covariance = fit.betaCovariance();
    assertThat(beta).hasSize(3);
    assertThat(across.differences().get(0)).isCloseTo(beta[1] + beta[2], within(1e-12));
    assertThat(across.covariance().get(0).get(0))
        .isCloseTo(covariance[1][1] + 2 * covariance[1][2] + covariance[2][2], within(1e-10));
    assertThat(across.disagreement().chiSquare())
        .isCloseTo(beta[2] * beta[2] / covariance[2][2], within(1e-8));
  }

  @Test
  void refuses_to_compare_fits_that_are_not_nested() {
    TakeFit stocks = STOCKS.fit(RECORDS);
    TakeFit storage =
        TakeModel.ofTakes().adjustFor("storage_days").varyBy("grafting_day").fit(RECORDS);
    assertThatThrownBy(() -> LikelihoodRatioTest.of(stocks, storage))
        .hasMessageStartingWith("the first model must be the second with columns left out");
    assertThatThrownBy(() -> LikelihoodRatioTest.of(stocks, stocks))
        .hasMessageStartingWith("the first model must be the second with columns left out");
  }

  @Test
  void refuses_coverage_of_all_or_nothing() {
    Profiles profiles = Profiles.of(STOCKS.fit(RECORDS));
    for (double coverage : new double[] {0, 1}) {
      assertThatThrownBy(() -> profiles.fixed(1, coverage))
          .hasMessage("coverage must lie between 0 and 1, got " + coverage);
    }
  }

  /** x2 = 7 - 2 x1 falls as x1 rises; x3 doesn't. Grafts weigh, so means aren't at the middle. */
  @Test
  void a_column_that_is_a_line_of_another_is_said_by_it() {
    double[][] rows = {{1, 1, 5, 2}, {1, 2, 3, 1}, {1, 4, -1, 8}};
    Patterns patterns = new Patterns(new int[] {0, 1, 2, 0}, rows, 4);
    assertThat(Identifiability.aliased(patterns, new int[] {5, 1, 2, 9})).containsExactly(2);
  }

  private static TakeDraws drawn(double sd) {
    VaryingFactor days =
        new VaryingFactor(
            "grafting_day",
            List.of("D1", "D2"),
            sd,
            new double[] {0, 0},
            new double[] {1, 1},
            new long[] {1, 1},
            new long[] {1, 1});
    TakeDraws.Draw draw =
        new TakeDraws.Draw(new double[] {0}, new double[] {sd}, new double[][] {{0, 0}});
    return new TakeDraws(STOCKS.fit(RECORDS).design(), List.of(days), 2_000, number -> draw);
  }

  /** The error of a mean of 2,000 normals is 0.022, of their variance 0.032. */
  @Test
  void levels_never_seen_are_normal_with_the_spread_of_the_draw() {
    TakeDraws.Column one = drawn(1).column("grafting_day");
    TakeDraws.Column three = drawn(3).column("grafting_day");
    double sum = 0;
    double squares = 0;
    double together = 0;
    for (int d = 0; d < 2_000; d++) {
      double x = one.in(d).ofUnseen(17);
      assertThat(three.in(d).ofUnseen(17)).isCloseTo(3 * x, within(1e-12));
      sum += x / 2_000;
      squares += x * x / 2_000;
      together += x * one.in(d).ofUnseen(18) / 2_000;
    }
    assertThat(sum).isCloseTo(0, within(0.08));
    assertThat(squares).isCloseTo(1, within(0.12));
    assertThat(together).isCloseTo(0, within(0.08));
  }

  @Test
  void lots_share_the_luck_of_a_new_day_only_if_it_is_the_same() {
    TakeFit fit = STOCKS.varyBy("grafting_day").fit(RECORDS);
    assertThat(fit.varying("grafting_day").standardDeviation()).isGreaterThan(0.1);
    TakeDraws draws = fit.draws(20, 3);
    PlannedLot lot = PlannedLot.any().with("rootstock", "R2");
    double[] monday = fit.predict(lot.with("grafting_day", "Monday"), draws).draws();
    double[] again = fit.predict(lot.with("grafting_day", "Monday"), draws).draws();
    double[] friday = fit.predict(lot.with("grafting_day", "Friday"), draws).draws();
    assertThat(again).isEqualTo(monday);
    for (int d = 0; d < 20; d++) {
      assertThat(friday[d]).isNotEqualTo(monday[d]);
    }
  }

  /** All took that were stored up to 5 days, and none of those stored longer. */
  @Test
  void refuses_a_curve_that_splits_takes_from_failures() {
    int[] grafts = IntStream.range(0, 12).map(i -> 3).toArray();
    int[] takes = IntStream.range(0, 12).map(i -> i <= 5 ? 3 : 0).toArray();
    double[] days = IntStream.range(0, 12).asDoubleStream().toArray();
    Cells split =
        new Cells(
            List.of(),
            List.of(new Measure("storage_days", days)),
            grafts,
            takes,
            0,
            Provenance.of("typed in", 12));
    for (int degrees : new int[] {2, 3}) {
      TakeModel curve = TakeModel.ofTakes().adjustForCurve("storage_days", degrees);
      assertThatThrownBy(() -> curve.fit(split))
          .isInstanceOf(CannotFit.class)
          .hasMessageContaining("splits takes from failures perfectly");
    }
  }

  @Test
  void among_more_than_100_000_cells_no_shift_is_looked_for() {
    int[] cells = new int[100_001];
    int[] none = {ModelData.NONE};
    ModelData evidence =
        new ModelData(cells, cells, null, new int[][] {cells}, new int[] {1}, none);
    LikelihoodPoint point = new LikelihoodPoint(new double[] {1}, new double[] {0});
    assertThat(ThinLevels.shifts(evidence, point, new double[0], new double[] {1}))
        .containsExactly(0);
  }

  /** Same seed, same points, same normals: the priors differ in the mean alone. */
  @Test
  void the_flat_prior_lies_further_out_than_jeffreys_with_spreads_drawn_too() {
    TakeFit fit = TakeModel.ofTakes().varyBy("grafting_day").fit(RECORDS);
    assertThat(fit.beta()[0]).isGreaterThan(0.3);
    TakeDraws flat = fit.draws(50, 3, Prior.halfNormal(1));
    TakeDraws jeffreys = fit.draws(50, 3, Prior.usual());
    for (int d = 0; d < 50; d++) {
      assertThat(flat.sds(d)).isEqualTo(jeffreys.sds(d));
      assertThat(flat.beta(d)[0]).isGreaterThan(jeffreys.beta(d)[0]);
    }
  }
}
