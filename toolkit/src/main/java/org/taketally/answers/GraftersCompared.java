package org.taketally.answers;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.Grafters.GrafterTake;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Interval;

/** Works out {@link Grafters} from shared draws. */
final class GraftersCompared {

  private final Averaging averaging;
  private final AnswerOptions options;
  private final Cells cells;

  GraftersCompared(Averaging averaging, AnswerOptions options) {
    this.averaging = averaging;
    this.options = options;
    this.cells = averaging.fit().cells();
  }

  Grafters answer() {
    TakeCount tally = Counted.all(cells);
    if (!averaging.knows(GrafterLabels.GRAFTER)) {
      Estimate none = new Estimate(0, new Interval(0, 0, options.level()));
      return new Grafters(List.of(), options.grafterNames(), none, tally, options);
    }
    double[][] takes = averaging.takes(GrafterLabels.GRAFTER);
    double[] shares = averaging.shares(GrafterLabels.GRAFTER);
    double[] typical =
        Arrays.stream(takes).mapToDouble(row -> Movers.typical(row, shares)).toArray();
    return new Grafters(
        grafters(takes),
        options.grafterNames(),
        Samples.estimate(typical, options.level()),
        tally,
        options);
  }

  private List<GrafterTake> grafters(double[][] takes) {
    Factor factor = cells.factor(GrafterLabels.GRAFTER);
    List<String> shown = GrafterLabels.shown(factor, options);
    List<String> levels = averaging.levels(GrafterLabels.GRAFTER);
    TakeCount[] counts = Counted.byLevel(cells, GrafterLabels.GRAFTER, levels);
    double[] average =
        Arrays.stream(takes).mapToDouble(row -> Arrays.stream(row).average().orElse(0)).toArray();
    return IntStream.range(0, levels.size())
        .mapToObj(
            g -> {
              String shownAs = shown.get(factor.indexOf(levels.get(g)));
              return grafter(shownAs, counts[g], Samples.column(takes, g), average);
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
        TakeRateInterval.wilson(count.takes(), count.grafts(), options.level()),
        Samples.estimate(takes, options.level()),
        Samples.estimate(differences, options.level()));
  }
}
