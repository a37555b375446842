package org.taketally.answers.verdict;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.counts.CountedTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.cells.Cells;
import org.taketally.model.CannotFit;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeModel;
import org.taketally.model.UnpooledLevels;
import org.taketally.terms.Logit;

/**
 * What the records say about one column of levels: takes with the levels left free, and how much
 * they differ on single cultivars.
 *
 * <p>Levels are left free, not drawn toward each other, because drawing them together would help a
 * claim of "no difference" along.
 *
 * @param levels level names
 * @param takes average take of each level, one row a draw, levels free
 * @param standardDeviation spread of the levels, logits
 * @param bounded levels of which none or all took: no finite difference to others can be fitted
 * @param free the fit with levels free; empty where the evidence is counts alone
 */
record FactorEvidence(
    List<String> levels,
    double[][] takes,
    Estimate standardDeviation,
    List<String> bounded,
    Optional<MarginalTakes> free) {

  /** Above this many cells draws begin at expected information: the observed takes far longer. */
  private static final int FEW_CELLS = 5_000;

  /** A large fit says the same to two digits and more as another fit would. */
  static FactorEvidence of(MarginalTakes main, String factor, AnswerOptions options) {
    if (!LevelSubstitution.varies(main.fit(), factor)) {
      return ofFree(main, factor, options);
    }
    return main.fit().isLarge()
        ? fromFitInHand(main, factor, options)
        : byFittingAgain(main, factor, options);
  }

  private static FactorEvidence ofFree(MarginalTakes free, String factor, AnswerOptions options) {
    List<String> levels = free.levels(factor);
    double[] sds = Arrays.stream(free.logits(factor)).mapToDouble(FactorEvidence::sd).toArray();
    return new FactorEvidence(
        levels,
        free.takes(factor),
        DrawSummary.median(sds, options.coverage()),
        bounded(free, factor, levels),
        Optional.of(free));
  }

  /** The same from more draws. */
  FactorEvidence withDraws(int draws, MarginalTakes main, String factor, AnswerOptions options) {
    AnswerOptions more = options.withDraws(draws);
    return free.filter(f -> f.fit() != main.fit())
        .map(f -> ofFree(MarginalTakes.of(f.fit(), more), factor, more))
        .orElseGet(() -> of(MarginalTakes.of(main.fit(), more), factor, more));
  }

  /** Levels that vary, freed within the fit. */
  static FactorEvidence fromFitInHand(MarginalTakes main, String factor, AnswerOptions options) {
    MarginalTakes free =
        UnpooledLevels.of(main.fit(), factor)
            .filter(l -> bounded(main, factor, main.levels(factor)).isEmpty())
            .map(l -> main.with(l.draws(main.count(), options.seed())))
            .orElse(main);
    return ofFree(free, factor, options);
  }

  /** Levels that vary, freed by fitting again. */
  static FactorEvidence byFittingAgain(MarginalTakes main, String factor, AnswerOptions options) {
    return ofFree(freedByFittingAgain(main, factor, options), factor, options);
  }

  private static MarginalTakes freedByFittingAgain(
      MarginalTakes main, String factor, AnswerOptions options) {
    TakeModel model = TakeModel.of(main.fit().model()).without(factor).adjustFor(factor);
    Cells cells = main.fit().cells();
    try {
      return MarginalTakes.of(
          cells.size() <= FEW_CELLS
              ? model.fit(cells)
              : model.fitNear(main.fit(), cells, FitOptions.defaults().withExpectedInformation()),
          options);
    } catch (CannotFit levelsOfNoneOrAll) {
      return main;
    }
  }

  /** From counts alone. */
  static FactorEvidence byCounts(List<String> levels, TakeCount[] counts, AnswerOptions options) {
    double[][] takes = CountedTakes.draws(counts, options);
    double[] sds =
        Arrays.stream(takes)
            .mapToDouble(row -> sd(Arrays.stream(row).map(Logit::of).toArray()))
            .toArray();
    return new FactorEvidence(
        levels, takes, DrawSummary.median(sds, options.coverage()), List.of(), Optional.empty());
  }

  private static List<String> bounded(MarginalTakes free, String factor, List<String> levels) {
    var counts = TakeCounter.byLevel(free.fit().cells(), factor, levels);
    return IntStream.range(0, counts.length)
        .filter(l -> counts[l].takes() == 0 || counts[l].failures() == 0)
        .mapToObj(levels::get)
        .toList();
  }

  private static double sd(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    double sum = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return values.length < 2 ? 0 : Math.sqrt(sum / (values.length - 1));
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }
}
