package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.terms.Interval;
import org.taketally.terms.Provenance;

/** A verdict close to a limit is made with more draws, so that it doesn't turn with the seed. */
class VerdictSeedTest {

  private static final int SEEDS = 20;
  private static final int DRAWS = 500;

  @Test
  void no_practical_difference_stays_what_it_is() {
    TakeFit fit = fit(285, 280);
    FactorVerdict.Pair pair = precise(fit);
    Interval range = pair.equivalence();
    double sd = (range.high() - range.low()) / (2 * 1.645);
    double margin = Math.max(range.high(), -range.low()) + 0.12 * sd;
    assertThat(verdicts(fit, margin)).containsExactly(Verdict.NO_PRACTICAL_DIFFERENCE);
  }

  @Test
  void matters_stays_what_it_is() {
    TakeFit fit = fit(320, 200);
    FactorVerdict.Pair pair = precise(fit);
    double sd = (pair.veryLikely().high() - pair.veryLikely().low()) / (2 * 2.326);
    assertThat(verdicts(fit, pair.veryLikely().low() - 0.12 * sd)).containsExactly(Verdict.MATTERS);
  }

  /** The levels are left free by another fit, which more draws must be taken of. */
  @Test
  void stocks_that_vary_are_settled_by_more_draws_too() {
    TakeFit fit = TakeModel.ofTakes().varyBy("rootstock", "grafting_day").fit(cells(320, 200));
    TakeFit freed = fit(320, 200);
    FactorVerdict.Pair pair = precise(freed);
    double sd = (pair.veryLikely().high() - pair.veryLikely().low()) / (2 * 2.326);
    assertThat(verdicts(fit, pair.veryLikely().low() - 0.12 * sd)).containsExactly(Verdict.MATTERS);
  }

  private static Set<Verdict> verdicts(TakeFit fit, double margin) {
    Set<Verdict> all = EnumSet.noneOf(Verdict.class);
    AnswerOptions options = AnswerOptions.defaults().withDraws(DRAWS).withMargin(margin);
    for (int seed = 0; seed < SEEDS; seed++) {
      all.add(FactorVerdictCalculator.of(fit, "rootstock", options.withSeed(seed)).verdict());
    }
    return all;
  }

  private static FactorVerdict.Pair precise(TakeFit fit) {
    MarginalTakes draws = MarginalTakes.of(fit, AnswerOptions.defaults().withDraws(60_000));
    return new PairDifferences(List.of("Pellin", "Ostrey"), draws.takes("rootstock"))
        .pairs(0.1, draws.takes("rootstock"), UnassessedBounds.none(2))
        .get(0);
  }

  /** 400 grafts on each of two stocks, on 10 days alike. */
  private static TakeFit fit(int takesOfOne, int takesOfOther) {
    return TakeModel.ofTakes()
        .varyBy("grafting_day")
        .compare("rootstock")
        .fit(cells(takesOfOne, takesOfOther));
  }

  private static Cells cells(int takesOfOne, int takesOfOther) {
    int[] cells = IntStream.range(0, 20).toArray();
    return new Cells(
        List.of(
            new Factor(
                "rootstock",
                List.of("Pellin", "Ostrey"),
                IntStream.of(cells).map(i -> i % 2).toArray()),
            new Factor(
                "grafting_day",
                IntStream.range(0, 10).mapToObj(day -> "day " + day).toList(),
                IntStream.of(cells).map(i -> i / 2).toArray())),
        List.of(),
        IntStream.of(cells).map(i -> 40).toArray(),
        IntStream.of(cells)
            .map(i -> share(i % 2 == 0 ? takesOfOne : takesOfOther, i / 2))
            .toArray(),
        0,
        Provenance.of("made for a test", 800));
  }

  /** A tenth of the takes, two more or fewer on every other day. */
  private static int share(int takes, int day) {
    return takes / 10 + (day % 2 == 0 ? 2 : -2);
  }
}
