package org.taketally.plan.size;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.plan.size.TrialSize.Claim;

/**
 * The chance a trial's size states, against 1,000 trials of that size made up and judged as records
 * are: by the default model and the rules of the verdict. Hands and days that differ don't lessen
 * it; the model takes them out, which gains a few points.
 */
@Tag("slow")
class TrialChancesStudyTest {

  private static final int TRIALS = 1_000;
  private static final Map<String, Double> UNEVEN =
      Map.of("cultivar", 0.6, "grafter", 0.4, "grafting_day", 0.3);

  @ParameterizedTest
  @CsvSource({"9, 0.8, false", "10, 0.7, false", "9, 0.8, true", "10, 0.7, true"})
  void trials_show_what_is_true_as_often_as_stated(
      int graftsPerPlot, double secondTake, boolean uneven) {
    Cells trial = VerdictChancesTest.trial(graftsPerPlot, 6);
    int grafts = (int) (trial.graftsTotal() / 2);
    boolean alike = secondTake == 0.8;
    double stated =
        TrialSize.of(TrialQuestion.of(0.8, 0.7), TrialUnits.singleGrafts())
            .chance(grafts, alike ? Claim.EQUIVALENCE : Claim.DIFFERENCE);
    VerdictChances judged =
        VerdictChances.of(
            trial,
            new VerdictChances.Settings(
                new TrialTruth(Map.of("A", 0.8, "B", secondTake), uneven ? UNEVEN : Map.of()),
                AnswerOptions.defaults(),
                TRIALS,
                done -> {}));
    double shown =
        judged.chance(Verdict.LESS_THAN_YOU_CARE_ABOUT)
            + (alike
                ? judged.chance(Verdict.NO_PRACTICAL_DIFFERENCE)
                : judged.chance(Verdict.DIFFERS_UNSETTLED) + judged.chance(Verdict.MATTERS));
    System.out.printf(
        "%d grafts a stock, %.0f %% against %.0f %%%s: stated %.3f, shown %.3f%n",
        grafts, 80.0, 100 * secondTake, uneven ? ", hands and days differ" : "", stated, shown);
    assertThat(shown).isBetween(stated - 0.03, stated + 0.05);
  }
}
