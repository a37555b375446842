package org.taketally.answers.effects;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.effects.Pairings.Pairing;
import org.taketally.cells.Cells;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.VaryingFactor;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Interval;

/**
 * Works out {@link Pairings} from shared draws. Each pairing is judged in the conditions of its own
 * grafts: with its own effect, and with that effect taken out.
 *
 * <p>The short list is the longest, in order of the chance of a true deficit, whose expected share
 * of false alarms stays within the bound (Newton et al. 2004,
 * https://doi.org/10.1093/biostatistics/5.2.155).
 */
public final class PairingsCalculator {

  private static final long AFFORDABLE = 100_000_000;
  private static final int LEAST_DRAWS = 100;

  private final MarginalTakes averaging;
  private final AnswerOptions options;
  private final TakeFit fit;
  private final Cells cells;
  private final TakeCount tally;

  private PairingsCalculator(MarginalTakes averaging, AnswerOptions options) {
    this.averaging = averaging;
    this.options = options;
    this.fit = averaging.fit();
    this.cells = fit.cells();
    this.tally = TakeCounter.all(cells);
  }

  /**
   * From a fit in which the pairing varies.
   *
   * @param fit the fit; without the pairing in its model, the headline says so
   * @param options margin, level, draws and seed
   * @return the comparison
   */
  public static Pairings of(TakeFit fit, AnswerOptions options) {
    return of(MarginalTakes.of(fit, options), options);
  }

  public static Pairings of(MarginalTakes averaging, AnswerOptions options) {
    return new PairingsCalculator(averaging, options).answer();
  }

  private Pairings answer() {
    if (!LevelSubstitution.varies(fit, TakeModel.PAIRING)) {
      Estimate none = new Estimate(0, new Interval(0, 0, options.coverage()));
      return new Pairings(List.of(), none, 0, tally, options);
    }
    Takes takes = takes();
    VaryingFactor pairings = fit.varying(TakeModel.PAIRING);
    int[] cell = cellOfEach(pairings.levels().size());
    List<Pairing> all =
        IntStream.range(0, pairings.levels().size())
            .parallel()
            .mapToObj(p -> pairing(pairings, p, cell[p], takes))
            .sorted(Comparator.comparingDouble(Pairing::probabilityWorse).reversed())
            .toList();
    int flagged = shortList(all);
    List<Pairing> marked =
        IntStream.range(0, all.size())
            .mapToObj(k -> k < flagged ? flagged(all.get(k)) : all.get(k))
            .sorted(Comparator.comparingDouble(p -> p.difference().value()))
            .toList();
    return new Pairings(marked, spread(), falseShare(all, flagged), tally, options);
  }

  private Estimate spread() {
    TakeDraws draws = averaging.draws();
    int place =
        fit.varying().stream()
            .map(VaryingFactor::factor)
            .toList()
            .indexOf(DerivedColumn.PAIRING.columnName());
    double[] sds =
        IntStream.range(0, draws.count()).mapToDouble(d -> draws.sds(d)[place]).toArray();
    return DrawSummary.median(sds, options.coverage());
  }

  /** Mean take of each pairing's own grafts, one row a draw. */
  private record Takes(double[][] with, double[][] without) {}

  private Takes takes() {
    int count = (int) Math.min(averaging.count(), Math.max(LEAST_DRAWS, AFFORDABLE / cells.size()));
    double[][] with = new double[count][];
    double[][] without = new double[count][];
    int[] codes = fit.design().codes(TakeModel.PAIRING);
    IntStream.range(0, count).parallel().forEach(d -> fill(d, codes, with, without));
    return new Takes(with, without);
  }

  private void fill(int d, int[] codes, double[][] with, double[][] without) {
    double[] eta = averaging.draws().linearPredictor(d);
    double[] effects = averaging.draws().effects(TakeModel.PAIRING, d);
    double[] grafts = new double[effects.length];
    double[] odds = Arrays.stream(effects).map(Math::exp).toArray();
    with[d] = new double[effects.length];
    without[d] = new double[effects.length];
    for (int i = 0; i < eta.length; i++) {
      int p = codes[i];
      int n = cells.grafts(i);
      double against = Math.exp(-eta[i]);
      grafts[p] += n;
      with[d][p] += n / (1 + against);
      without[d][p] += n / (1 + against * odds[p]);
    }
    for (int p = 0; p < grafts.length; p++) {
      with[d][p] /= grafts[p];
      without[d][p] /= grafts[p];
    }
  }

  private Pairing pairing(VaryingFactor pairings, int p, int cell, Takes takes) {
    double[] with = DrawSummary.column(takes.with(), p);
    double[] without = DrawSummary.column(takes.without(), p);
    double[] differences =
        IntStream.range(0, with.length).mapToDouble(d -> with[d] - without[d]).toArray();
    TakeCount count = new TakeCount(pairings.takes(p), pairings.grafts(p));
    return new Pairing(
        cells
            .findFactor(RecordColumn.CULTIVAR.columnName())
            .map(f -> f.levels().get(f.code(cell)))
            .orElse(""),
        cells
            .findFactor(RecordColumn.ROOTSTOCK.columnName())
            .map(f -> f.levels().get(f.code(cell)))
            .orElse(""),
        count,
        TakeRateInterval.wilson(count.takes(), count.grafts(), options.coverage()),
        DrawSummary.estimate(without, options.coverage()).value(),
        DrawSummary.estimate(with, options.coverage()),
        DrawSummary.estimate(differences, options.coverage()),
        DrawSummary.probability(differences, difference -> difference < -options.margin()),
        false);
  }

  /** A cell of each pairing. */
  private int[] cellOfEach(int pairings) {
    int[] codes = fit.design().codes(TakeModel.PAIRING);
    int[] cell = new int[pairings];
    for (int i = 0; i < codes.length; i++) {
      cell[codes[i]] = i;
    }
    return cell;
  }

  private static Pairing flagged(Pairing p) {
    return new Pairing(
        p.cultivar(),
        p.rootstock(),
        p.tally(),
        p.counted(),
        p.expected(),
        p.take(),
        p.difference(),
        p.probabilityWorse(),
        true);
  }

  /** How many of the surest can be listed; {@code surest} in falling order of the chance. */
  private static int shortList(List<Pairing> surest) {
    int listed = 0;
    while (listed < surest.size()
        && falseShare(surest, listed + 1) <= Pairings.FALSE_SHARE_AT_MOST) {
      listed++;
    }
    return listed;
  }

  private static double falseShare(List<Pairing> surest, int listed) {
    return surest.stream()
        .limit(listed)
        .mapToDouble(p -> 1 - p.probabilityWorse())
        .average()
        .orElse(0);
  }
}
