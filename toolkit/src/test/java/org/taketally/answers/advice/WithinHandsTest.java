package org.taketally.answers.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.confounding.ConfoundingCalculator;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurveCalculator;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.LevelComparison;
import org.taketally.answers.verdict.LevelComparisonCalculator;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.TakeFit;

/** Choices compared within hands and days, on circles of known truth. */
class WithinHandsTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(200);

  private static TakeFit fit(Cells cells) {
    return FallbackFit.of(cells, SuggestedModel.of(cells).model()).fit();
  }

  private static TakeFit fit(CircleTruth.Kind kind) {
    return fit(new CircleTruth(kind, 1).cells());
  }

  private static TakeCurve curve(TakeFit fit) {
    return TakeCurveCalculator.of(fit, OPTIONS, "storage_days");
  }

  @Test
  void who_used_what_says_whether_a_fit_of_its_own_is_needed() {
    TakeFit dealt = fit(CircleTruth.Kind.NOTHING_MATTERS);
    TakeFit apart = fit(CircleTruth.Kind.NOVICE_WITH_DORMANT_WOOD);

    assertThat(new WithinHands(dealt, OPTIONS).uneven("bud_stage")).isFalse();
    assertThat(new WithinHands(apart, OPTIONS).uneven("bud_stage")).isTrue();
    assertThat(new WithinHands(apart, OPTIONS).uneven("method")).isFalse();
  }

  /** Nothing matters, dormant wood was mostly the beginner's: counts blame the wood for it. */
  @Test
  void wood_that_a_beginner_used_is_not_blamed_for_the_hand() {
    TakeFit fit = fit(CircleTruth.Kind.NOVICE_WITH_DORMANT_WOOD);
    Factor buds = fit.cells().factor("bud_stage");
    double[] taken = new double[2];
    double[] grafts = new double[2];
    for (int i = 0; i < fit.cells().size(); i++) {
      taken[buds.code(i)] += fit.cells().takes(i);
      grafts[buds.code(i)] += fit.cells().grafts(i);
    }
    double counted = taken[1] / grafts[1] - taken[0] / grafts[0];
    assertThat(counted).as("difference as counted").isGreaterThan(0.1);

    LevelComparison within = new WithinHands(fit, OPTIONS).levels("bud_stage").orElseThrow();

    assertThat(within.pairs()).hasSize(1);
    FactorVerdict.Pair pair = within.pairs().get(0);
    double sign = pair.level().equals("bud_stage-01") ? 1 : -1;
    assertThat(sign * pair.difference().value())
        .as("difference within hands")
        .isLessThan(counted / 2);
    assertThat(pair.difference().low()).isNegative();
  }

  /** Each hand had one kind of wood only: nothing can part the two. */
  @Test
  void levels_that_no_hand_used_beside_each_other_are_not_parted() {
    Cells cells = new CircleTruth(CircleTruth.Kind.NOTHING_MATTERS, 1).cells();
    Factor hands = cells.factor("grafter");
    int[] codes = new int[cells.size()];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = hands.code(i) < 2 ? 0 : 1;
    }
    Factor buds = new Factor("bud_stage", cells.factor("bud_stage").levels(), codes);
    TakeFit fit = fit(cells.with(buds));

    Optional<LevelComparison> within = new WithinHands(fit, OPTIONS).levels("bud_stage");

    assertThat(within.map(LevelComparison::pairs).orElse(List.of())).isEmpty();
  }

  @Test
  void a_number_that_hardly_changed_within_hands_has_no_curve_within_them() {
    Cells cells = new CircleTruth(CircleTruth.Kind.NOTHING_MATTERS, 1).cells();
    Factor hands = cells.factor("grafter");
    Measure days = cells.measure("storage_days");
    double[] values = new double[cells.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = 2 * hands.code(i) + days.value(i) / 12;
    }
    TakeFit met = fit(cells);
    TakeFit apart = fit(cells.with(List.of(new Measure("storage_days", values))));

    assertThat(new WithinHands(met, OPTIONS).curve(curve(met))).isPresent();
    assertThat(new WithinHands(apart, OPTIONS).curve(curve(apart))).isEmpty();
  }

  /** Nothing matters, old wood came on bad days: within days the fall is smaller than across. */
  @Test
  void old_wood_is_not_blamed_for_bad_days() {
    TakeFit fit = fit(CircleTruth.Kind.OLD_WOOD_ON_BAD_DAYS);
    TakeCurve within = new WithinHands(fit, OPTIONS).curve(curve(fit)).orElseThrow();
    Cells cells = fit.cells();
    double young = share(cells, 0, 5);
    double old = share(cells, 6, 11);
    assertThat(young - old).as("fall as counted").isGreaterThan(0.1);

    double from = within.points().get(2).take().value();
    double to = within.points().get(within.points().size() - 3).take().value();

    assertThat(from - to).as("fall within days").isLessThan((young - old) / 2);
  }

  /** A row of six grafts has one kind of wood; that is no reason to call kinds never compared. */
  @Test
  void wood_of_rows_of_several_grafts_is_compared_as_that_of_single_ones() {
    Cells cells = new CircleTruth(CircleTruth.Kind.NOTHING_MATTERS, 1).cells();
    int[] rows = IntStream.range(0, cells.size()).toArray();
    List<String> names = IntStream.of(rows).mapToObj(row -> "row " + row).toList();
    TakeFit fit = fit(cells);
    LevelComparison single =
        LevelComparisonCalculator.of(fit, List.of("bud_stage"), OPTIONS).get(0);

    Confounding inRows =
        ConfoundingCalculator.of(
            cells.with(new Factor(Cells.BATCH_ROW, names, rows)), "bud_stage", OPTIONS);

    assertThat(inRows).isEqualTo(ConfoundingCalculator.of(cells, "bud_stage", OPTIONS));
    assertThat(new WithinHands(fit, OPTIONS).met(single).pairs()).hasSize(1);
  }

  private static double share(Cells cells, double from, double to) {
    Measure days = cells.measure("storage_days");
    double taken = 0;
    double grafts = 0;
    for (int i = 0; i < cells.size(); i++) {
      if (days.value(i) >= from && days.value(i) <= to) {
        taken += cells.takes(i);
        grafts += cells.grafts(i);
      }
    }
    return taken / grafts;
  }
}
