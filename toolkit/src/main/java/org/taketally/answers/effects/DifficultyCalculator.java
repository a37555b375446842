package org.taketally.answers.effects;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.adjusted.StandardConditions;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;
import org.taketally.records.columns.RecordColumn;

/** Works out {@link Difficulty} from the draws of a fit. */
public final class DifficultyCalculator {

  private static final String CULTIVAR = RecordColumn.CULTIVAR.columnName();

  private final TakeFit fit;
  private final MarginalTakes averaging;
  private final AnswerOptions options;
  private final List<String> levels;
  private final double[][] takes;
  private final double[][] standard;
  private final double[][] ranks;
  private final Optional<Difficulty.Within> within;

  private DifficultyCalculator(MarginalTakes averaging, AnswerOptions options) {
    this.fit = averaging.fit();
    this.averaging = averaging;
    this.options = options;
    this.levels = averaging.levels(CULTIVAR);
    this.takes = averaging.takes(CULTIVAR);
    this.standard = new StandardConditions(averaging).takes(CULTIVAR);
    this.ranks =
        java.util.Arrays.stream(takes).map(DifficultyCalculator::ranks).toArray(double[][]::new);
    this.within = new CultivarsWithin(fit, options).takes();
  }

  /**
   * Works it out from a fit.
   *
   * @param fit a fit in which {@code cultivar} varies or is adjusted for
   * @param options level, draws, seed, bands
   * @return the answer
   * @throws IllegalArgumentException if the fit doesn't know cultivars
   */
  public static Difficulty of(TakeFit fit, AnswerOptions options) {
    return of(MarginalTakes.of(fit, options), options);
  }

  public static Difficulty of(MarginalTakes averaging, AnswerOptions options) {
    return new DifficultyCalculator(averaging, options).difficulty();
  }

  private Difficulty difficulty() {
    TakeCount[] counts = TakeCounter.byLevel(fit.cells(), CULTIVAR, levels);
    List<Difficulty.CultivarTake> cultivars =
        IntStream.range(0, levels.size())
            .mapToObj(l -> cultivar(l, counts[l]))
            .sorted(
                Comparator.comparingDouble((Difficulty.CultivarTake c) -> c.take().value())
                    .thenComparing(Difficulty.CultivarTake::cultivar))
            .toList();
    return new Difficulty(
        cultivars,
        new StandardConditions(averaging).conditions(),
        TakeCounter.all(fit.cells()),
        within,
        options);
  }

  private Difficulty.CultivarTake cultivar(int l, TakeCount count) {
    double[] take = DrawSummary.column(takes, l);
    double[] rank = DrawSummary.column(ranks, l);
    double quarter = Math.max(1, levels.size() / 4.0);
    return new Difficulty.CultivarTake(
        levels.get(l),
        count,
        TakeRateInterval.wilson(count.takes(), count.grafts(), options.coverage()),
        DrawSummary.estimate(DrawSummary.column(standard, l), options.coverage()),
        DrawSummary.estimate(take, options.coverage()),
        drawnIn(l),
        DrawSummary.median(rank, options.coverage()),
        DrawSummary.probability(rank, r -> r <= quarter),
        confirmed(band(take), levels.get(l)));
  }

  /** Share of the prior variance that the records left standing: 0 where they decided all. */
  private double drawnIn(int l) {
    if (!LevelSubstitution.varies(fit, CULTIVAR)) {
      return 0;
    }
    VaryingFactor factor = fit.varying(CULTIVAR);
    double sd = factor.standardDeviation();
    return sd == 0 ? 1 : Math.min(1, Math.pow(factor.levelEffectSd(l) / sd, 2));
  }

  /** A band that the comparison within hands and days doesn't bear out can't be told. */
  private Band confirmed(Band band, String cultivar) {
    return within
        .map(found -> found.takes().get(cultivar))
        .filter(take -> band != inBand(take.value()))
        .map(take -> Band.CANT_TELL)
        .orElse(band);
  }

  private Band inBand(double take) {
    AnswerOptions.Bands bands = options.bands();
    if (take < bands.hardBelow()) {
      return Band.HARD;
    }
    return take >= bands.easyFrom() ? Band.EASY : Band.MIDDLING;
  }

  private Band band(double[] take) {
    AnswerOptions.Bands bands = options.bands();
    double hard = DrawSummary.probability(take, t -> t < bands.hardBelow());
    double easy = DrawSummary.probability(take, t -> t >= bands.easyFrom());
    if (hard >= bands.sure()) {
      return Band.HARD;
    }
    if (easy >= bands.sure()) {
      return Band.EASY;
    }
    return 1 - hard - easy >= bands.sure() ? Band.MIDDLING : Band.CANT_TELL;
  }

  /** Rank of each level in one draw, 1 the lowest; levels that tie share the mean rank. */
  static double[] ranks(double[] takes) {
    List<Integer> order = new ArrayList<>(IntStream.range(0, takes.length).boxed().toList());
    order.sort(Comparator.comparingDouble(l -> takes[l]));
    double[] ranks = new double[takes.length];
    for (int from = 0; from < takes.length; ) {
      int to = from;
      while (to + 1 < takes.length && takes[order.get(to + 1)] == takes[order.get(from)]) {
        to++;
      }
      for (int k = from; k <= to; k++) {
        ranks[order.get(k)] = 1 + (from + to) / 2.0;
      }
      from = to + 1;
    }
    return ranks;
  }
}
