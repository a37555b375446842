package org.taketally.plan.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.plan.size.TrialQuestion.Claim;
import org.taketally.terms.Logit;

/**
 * The chance a trial's size states, against 1,000 trials of that size made up and judged as records
 * are: by the default model and the rules of the verdict. How lucky these 1,000 were is seen in
 * their counts, judged by the textbook's tests, beside those of 20,000 more; it is taken off (a
 * control variate: Ripley 1987, Stochastic Simulation, section 5.3).
 */
@Tag("slow")
class TrialChancesStudyTest {

  private static final int TRIALS = 1_000;
  private static final int MORE_TRIALS = 20_000;
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final Map<String, Double> UNEVEN =
      Map.of("cultivar", 0.6, "grafter", 0.4, "grafting_day", 0.3);

  @ParameterizedTest
  @CsvSource({"9, 0.8, false", "10, 0.7, false", "9, 0.8, true", "10, 0.7, true"})
  void trials_show_what_is_true_as_often_as_stated(
      int graftsPerPlot, double secondTake, boolean uneven) {
    Cells trial = VerdictChancesTest.trial(graftsPerPlot, 6);
    int grafts = (int) (trial.graftsTotal() / 2);
    Claim claim = secondTake == 0.8 ? Claim.EQUIVALENCE : Claim.DIFFERENCE;
    Map<String, Double> spreads = uneven ? UNEVEN : Map.of();
    TrialTruth truth = new TrialTruth(Map.of("A", 0.8, "B", secondTake), spreads);
    double spread = spreadOfTake(0.8, spreads);
    double stated =
        TrialSize.of(TrialQuestion.of(0.8, 0.7).withSharedSpread(spread), TrialUnits.singleGrafts())
            .chance(grafts, claim);
    AnswerOptions options = AnswerOptions.defaults();
    VerdictChances judged =
        VerdictChances.of(trial, new VerdictChances.Settings(truth, options, TRIALS, done -> {}));
    double shown =
        judged.chance(Verdict.LESS_THAN_YOU_CARE_ABOUT)
            + (claim == Claim.EQUIVALENCE
                ? judged.chance(Verdict.NO_PRACTICAL_DIFFERENCE)
                : judged.chance(Verdict.DIFFERS_UNSETTLED) + judged.chance(Verdict.MATTERS));
    SimulatedTakes takes = new SimulatedTakes(trial, truth);
    IntPredicate byCounts =
        i -> byCounts(takes.draw(VerdictChances.seed(options, i)), claim, spread);
    double luck = share(0, TRIALS, byCounts) - share(TRIALS, MORE_TRIALS, byCounts);
    System.out.printf(
        "%d grafts a stock, 80 %% against %.0f %%%s: stated %.3f, shown %.3f, of which luck %.3f%n",
        grafts, 100 * secondTake, uneven ? ", hands and days differ" : "", stated, shown, luck);
    assertThat(shown - luck).isCloseTo(stated, within(0.03));
  }

  private static double share(int from, int count, IntPredicate shown) {
    return IntStream.range(from, from + count).parallel().filter(shown).count() / (double) count;
  }

  /** Two takes by their counts, with the variance that is left within hands, days and cultivars. */
  private static boolean byCounts(Cells cells, Claim claim, double spread) {
    TakeCount[] counts = TakeCounter.byLevel(cells, "rootstock", List.of("A", "B"));
    double first = (double) counts[0].takes() / counts[0].grafts();
    double second = (double) counts[1].takes() / counts[1].grafts();
    double gap = Math.abs(first - second);
    double within = first * (1 - first) + second * (1 - second) - 2 * spread * spread;
    double error = Math.sqrt(within / counts[0].grafts());
    return claim == Claim.EQUIVALENCE
        ? gap + NORMAL.inverseSurvivalProbability(TrialQuestion.FALSE_EQUIVALENCE) * error < 0.1
        : gap > NORMAL.inverseSurvivalProbability(TrialQuestion.FALSE_DIFFERENCE / 2) * error;
  }

  /** Standard deviation of takes whose logits differ by these standard deviations. */
  private static double spreadOfTake(double take, Map<String, Double> spreads) {
    double sd = Math.sqrt(spreads.values().stream().mapToDouble(s -> s * s).sum());
    double centre = SimulatedTakes.logitFor(take, sd);
    Random random = new Random(1);
    return Math.sqrt(
        IntStream.range(0, 1_000_000)
            .mapToDouble(i -> Logit.take(centre + sd * random.nextGaussian()) - take)
            .map(away -> away * away)
            .average()
            .orElseThrow());
  }
}
