package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.SixBeds;
import org.taketally.model.TakeModel;
import org.taketally.wording.Wording;

/** Two stocks in three beds each: how far beds may differ decides what can be said. */
class PriorsTriedTest {

  private static final TakeModel MODEL = TakeModel.ofTakes().varyBy("block").compare("rootstock");
  private static final AnswerOptions OPTIONS = AnswerOptions.defaults();

  private static FactorVerdict verdict(int[] takesByBed, AnswerOptions options) {
    return RootstockVerdictCalculator.of(MODEL, SixBeds.of(takesByBed), options).type();
  }

  private static FactorVerdict.PriorsTried priors(FactorVerdict verdict) {
    return verdict.notes().stream()
        .filter(FactorVerdict.PriorsTried.class::isInstance)
        .map(FactorVerdict.PriorsTried.class::cast)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void says_so_where_the_verdict_hangs_on_the_prior() {
    FactorVerdict verdict =
        verdict(new int[] {155, 130, 148, 118, 132, 105}, OPTIONS.withPriorScale(0.2));
    assertThat(priors(verdict).tried().keySet()).containsExactly(0.1, 0.4);
    assertThat(priors(verdict).tried().values()).anyMatch(other -> other != verdict.verdict());
    assertThat(Wording.of(verdict).text())
        .contains("It hangs on how much days, hands and the like were believed to differ")
        .contains(" logits. More groups (days, beds, hands) would settle it.");
  }

  @Test
  void says_so_where_it_does_not() {
    FactorVerdict verdict = verdict(new int[] {180, 182, 181, 60, 61, 59}, OPTIONS);
    assertThat(verdict.verdict()).isEqualTo(Verdict.MATTERS);
    assertThat(priors(verdict).tried().values()).containsOnly(Verdict.MATTERS);
    assertThat(Wording.of(verdict).text()).contains("the verdict would be the same");
  }

  @Test
  void a_smaller_scale_gives_narrower_ranges() {
    int[] takes = {150, 140, 145, 132, 136, 126};
    double usual =
        verdict(takes, OPTIONS).size().orElseThrow().pairs().get(0).difference().interval().width();
    double small =
        verdict(takes, OPTIONS.withPriorScale(0.1))
            .size()
            .orElseThrow()
            .pairs()
            .get(0)
            .difference()
            .interval()
            .width();
    assertThat(small).isLessThan(0.8 * usual);
  }

  @Test
  void refuses_a_scale_that_is_none() {
    assertThatThrownBy(() -> OPTIONS.withPriorScale(0))
        .hasMessage("the prior's scale must be above 0 and at most 10 logits, e.g. 1, got 0.0");
  }
}
