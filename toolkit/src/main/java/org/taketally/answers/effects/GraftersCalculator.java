package org.taketally.answers.effects;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.effects.Grafters.GrafterTake;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.terms.Interval;

/** Works out {@link Grafters} from shared draws. */
public final class GraftersCalculator {

  private final MarginalTakes averaging;
  private final AnswerOptions options;
  private final Cells cells;

  private GraftersCalculator(MarginalTakes averaging, AnswerOptions options) {
    this.averaging = averaging;
    this.options = options;
    this.cells = averaging.fit().cells();
  }

  /**
   * From a fit in which the grafter varies or is adjusted for.
   *
   * @param fit the fit; without the grafter in its model, the headline says so
   * @param options level, draws, seed, and whether names may be shown
   * @return the comparison
   */
  public static Grafters of(TakeFit fit, AnswerOptions options) {
    return of(MarginalTakes.of(fit, options), options);
  }

  public static Grafters of(MarginalTakes averaging, AnswerOptions options) {
    return new GraftersCalculator(averaging, options).answer();
  }

  private Grafters answer() {
    TakeCount tally = TakeCounter.all(cells);
    if (!averaging.knows(GrafterLabels.GRAFTER)) {
      Estimate none = new Estimate(0, new Interval(0, 0, options.coverage()));
      return new Grafters(List.of(), options.grafterNames(), none, tally, options);
    }
    double[][] takes = averaging.takes(GrafterLabels.GRAFTER);
    double[] shares = averaging.shares(GrafterLabels.GRAFTER);
    double[] typical =
        Arrays.stream(takes)
            .mapToDouble(row -> FactorImportanceCalculator.typical(row, shares))
            .toArray();
    return new Grafters(
        grafters(takes),
        options.grafterNames(),
        DrawSummary.estimate(typical, options.coverage()),
        tally,
        options);
  }

  private List<GrafterTake> grafters(double[][] takes) {
    Factor factor = cells.factor(GrafterLabels.GRAFTER);
    List<String> shown = GrafterLabels.shown(factor, options);
    List<String> levels = averaging.levels(GrafterLabels.GRAFTER);
    TakeCount[] counts = TakeCounter.byLevel(cells, GrafterLabels.GRAFTER, levels);
    double[] average =
        Arrays.stream(takes).mapToDouble(row -> Arrays.stream(row).average().orElse(0)).toArray();
    return IntStream.range(0, levels.size())
        .mapToObj(
            g -> {
              String shownAs = shown.get(factor.indexOf(levels.get(g)));
              return grafter(shownAs, counts[g], DrawSummary.column(takes, g), average);
            })
        .sorted(Comparator.comparingDouble((GrafterTake g) -> g.take().value()).reversed())
        .toList();
  }

  private GrafterTake grafter(String shownAs, TakeCount count, double[] takes, double[] average) {
    double[] differences =
        IntStream.range(0, takes.length).mapToDouble(d -> takes[d] - average[d]).toArray();
    return new GrafterTake(
        shownAs,
        count,
        TakeRateInterval.wilson(count.takes(), count.grafts(), options.coverage()),
        DrawSummary.estimate(takes, options.coverage()),
        DrawSummary.estimate(differences, options.coverage()));
  }
}
