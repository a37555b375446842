package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.confounding.ConfoundingCalculator;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.model.TakeFit;

/** Compares the levels of several factors within one fit, by one set of draws. */
public final class LevelComparisonCalculator {

  private final TakeFit fit;
  private final AnswerOptions options;
  private final MarginalTakes averaging;

  private LevelComparisonCalculator(MarginalTakes averaging, AnswerOptions options) {
    this.fit = averaging.fit();
    this.options = options;
    this.averaging = averaging;
  }

  /**
   * The levels of some factors as the fit sees them.
   *
   * @param fit any fit
   * @param factors columns of levels
   * @param options margin, level, draws, seed
   * @return one for each factor that the fit has, in the same order
   */
  public static List<LevelComparison> of(TakeFit fit, List<String> factors, AnswerOptions options) {
    return factors.isEmpty() ? List.of() : of(MarginalTakes.of(fit, options), factors, options);
  }

  /**
   * The same from draws at hand.
   *
   * @param averaging draws of any fit
   * @param factors columns of levels
   * @param options margin and level
   * @return one for each factor that the fit has, in the same order
   */
  public static List<LevelComparison> of(
      MarginalTakes averaging, List<String> factors, AnswerOptions options) {
    LevelComparisonCalculator calculator = new LevelComparisonCalculator(averaging, options);
    return factors.stream()
        .filter(calculator.averaging::knows)
        .map(calculator::comparison)
        .toList();
  }

  private LevelComparison comparison(String factor) {
    List<String> names = averaging.levels(factor);
    double[][] takes = averaging.takes(factor);
    Confounding entanglement = ConfoundingCalculator.of(fit.cells(), factor, options);
    List<Pair> pairs =
        new PairDifferences(names, takes)
            .pairs(options.margin(), takes, UnassessedBounds.none(names.size())).stream()
                .filter(pair -> together(entanglement, pair))
                .toList();
    return new LevelComparison(factor, levels(factor, names, takes), pairs, entanglement, options);
  }

  private static boolean together(Confounding entanglement, Pair pair) {
    Optional<Confounding.Group> group = entanglement.groupOf(pair.level());
    return group.filter(g -> g.levels().contains(pair.other())).isPresent();
  }

  private List<LevelTake> levels(String factor, List<String> names, double[][] takes) {
    TakeCount[] counts = TakeCounter.byLevel(fit.cells(), factor, names);
    List<LevelTake> levels = new ArrayList<>();
    IntStream.range(0, names.size())
        .filter(l -> counts[l].grafts() > 0)
        .forEach(
            l ->
                levels.add(
                    new LevelTake(
                        names.get(l),
                        counts[l],
                        TakeRateInterval.wilson(
                            counts[l].takes(), counts[l].grafts(), options.coverage()),
                        Optional.of(
                            DrawSummary.estimate(DrawSummary.column(takes, l), options.coverage())),
                        false)));
    return levels;
  }
}
