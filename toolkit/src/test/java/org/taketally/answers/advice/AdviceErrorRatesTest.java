package org.taketally.answers.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.effects.TakeCurveCalculator;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;

/** How often advice is wrong, and how often it comes where it should, on circles of known truth. */
class AdviceErrorRatesTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(400);

  private record Circle(CircleTruth.Kind kind, int seed) {}

  /** More than one test asks for the same circle; each takes seconds. */
  private static final Map<Circle, SeasonAdvice> WORKED_OUT = new ConcurrentHashMap<>();

  private static SeasonAdvice advice(CircleTruth.Kind kind, int seed) {
    return WORKED_OUT.computeIfAbsent(
        new Circle(kind, seed), circle -> advice(new CircleTruth(kind, seed)));
  }

  private static SeasonAdvice advice(CircleTruth truth) {
    Cells cells = truth.cells();
    TakeFit fit = FallbackFit.of(cells, SuggestedModel.of(cells).model()).fit();
    return SeasonAdviceCalculator.of(
        fit, List.of(TakeCurveCalculator.of(fit, OPTIONS, "storage_days")), true, OPTIONS);
  }

  private static long wrong(CircleTruth.Kind kind, int circles) {
    return IntStream.range(0, circles)
        .filter(
            seed -> {
              CircleTruth truth = new CircleTruth(kind, seed);
              return advice(kind, seed).steps().stream().anyMatch(truth::isWrong);
            })
        .count();
  }

  /** At 5 in 100, more than 1 of 5 come in 1 of 44 runs; seeds are fixed. */
  @ParameterizedTest
  @EnumSource
  void advice_is_hardly_ever_wrong(CircleTruth.Kind kind) {
    assertThat(wrong(kind, 5)).isLessThanOrEqualTo(1);
  }

  /**
   * The promise: at most 5 of 100 in the worst kind; 200 circles leave 3 points of chance. What was
   * counted stands in docs/reading-the-page.md.
   */
  @Tag("slow")
  @ParameterizedTest
  @EnumSource
  void advice_is_wrong_in_at_most_five_of_a_hundred(CircleTruth.Kind kind) {
    long wrong = wrong(kind, 200);
    System.out.println(kind + ": wrong advice in " + wrong + " of 200 circles");
    assertThat(wrong).isLessThanOrEqualTo(16);
  }

  /** Advice that never comes would pass the tests above. */
  @Test
  void a_stock_that_is_clearly_worse_and_old_wood_are_mostly_advised_against() {
    int stock = 0;
    int wood = 0;
    for (int seed = 0; seed < 5; seed++) {
      SeasonAdvice advice = advice(CircleTruth.Kind.ONE_STOCK_WORSE_AND_OLD_WOOD, seed);
      stock += advice.steps().stream().anyMatch(a -> a.factor().equals("rootstock")) ? 1 : 0;
      wood += advice.steps().stream().anyMatch(Advice.UseWithin.class::isInstance) ? 1 : 0;
    }
    assertThat(stock).isGreaterThanOrEqualTo(4);
    assertThat(wood).isGreaterThanOrEqualTo(3);
  }

  @Test
  void without_hands_nothing_is_advised_and_the_reason_is_given() {
    Cells cells = new CircleTruth(CircleTruth.Kind.ONE_STOCK_WORSE_AND_OLD_WOOD, 1).cells();
    TakeFit fit = FallbackFit.of(cells, SuggestedModel.of(cells).model()).fit();

    SeasonAdvice advice = SeasonAdviceCalculator.of(fit, List.of(), false, OPTIONS);

    assertThat(advice.steps()).isEmpty();
    assertThat(advice.none())
        .extracting(NoAdvice::factor, NoAdvice::reason)
        .contains(
            org.assertj.core.groups.Tuple.tuple("rootstock", NoAdvice.Reason.HANDS_NOT_RECORDED));
  }
}
