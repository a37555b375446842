package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.SixBeds;
import org.taketally.answers.verdict.FactorVerdict.BetweenGroupsOnly;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;
import org.taketally.wording.Wording;

/** Where each bed has one stock, beds are what counts, and that is said. */
class BetweenGroupsTest {

  private static final TakeModel MODEL = TakeModel.ofTakes().varyBy("block").compare("rootstock");

  private static FactorVerdict verdict(Cells cells) {
    return RootstockVerdictCalculator.of(MODEL, cells, AnswerOptions.defaults()).type();
  }

  private static Optional<BetweenGroupsOnly> note(FactorVerdict verdict) {
    return verdict.notes().stream()
        .filter(BetweenGroupsOnly.class::isInstance)
        .map(BetweenGroupsOnly.class::cast)
        .findFirst();
  }

  @Test
  void six_beds_of_one_stock_each_count_as_six() {
    FactorVerdict verdict = verdict(SixBeds.of(new int[] {155, 130, 148, 118, 132, 105}));
    BetweenGroupsOnly note = note(verdict).orElseThrow();
    assertThat(note.groups()).isEqualTo("block");
    assertThat(note.count()).isEqualTo(6);
    FactorVerdict.Test test =
        verdict.tests().stream()
            .filter(t -> t.method() == FactorVerdict.TestMethod.F_BY_GROUPS)
            .findFirst()
            .orElseThrow();
    assertThat(test.degrees()).isEqualTo(4);
    // R 4.2.2, t.test of the six shares, var.equal = TRUE: t = 2.41173, 4 df, p = 0.07341709
    assertThat(test.pValue()).isEqualTo(note.pValue()).isCloseTo(0.0734, within(0.01));
    assertThat(Wording.of(verdict).text())
        .contains(
            "Hardly any block holds more than one of them, so 6 times block is what there is");
  }

  @Test
  void beds_that_hold_both_stocks_are_not_what_counts() {
    Cells apart = SixBeds.of(new int[] {155, 130, 148, 118, 132, 105});
    Factor beds = apart.factor("block");
    int[] mixed = new int[apart.size()];
    for (int i = 0; i < mixed.length; i++) {
      mixed[i] = i % 3;
    }
    Cells shared = apart.without("block").with(new Factor("block", List.of("a", "b", "c"), mixed));
    assertThat(beds.size()).isEqualTo(6);
    assertThat(note(verdict(shared))).isEmpty();
  }
}
