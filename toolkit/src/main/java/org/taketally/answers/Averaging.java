package org.taketally.answers;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;

/**
 * Average takes as if every graft had one level of a column, all else as recorded, in each
 * posterior draw.
 *
 * <pre>
 *   eta    logit of take of a condition in a draw, see {@link Conditions}
 *   swap   the part of eta that the column contributes
 *   e      what a level would contribute instead
 *   take   sum[weight * logistic(eta - swap + e)]
 * </pre>
 */
final class Averaging {

  private static final long DRAWN_NUMBERS = 40_000_000;

  private final TakeFit fit;
  private final TakeDesign design;
  private final TakeDraws draws;
  private final Conditions conditions;
  private final float[][] eta;

  Averaging(TakeFit fit, AnswerOptions options) {
    this(fit, fit.draws(affordable(fit, options), options.seed()), new Conditions(fit));
  }

  private Averaging(TakeFit fit, TakeDraws draws, Conditions conditions) {
    this.fit = fit;
    this.design = fit.design();
    this.draws = draws;
    this.conditions = conditions;
    this.eta = new float[draws.count()][];
    IntStream.range(0, eta.length).parallel().forEach(d -> eta[d] = conditions.eta(draws, d));
  }

  private static int affordable(TakeFit fit, AnswerOptions options) {
    long levels = fit.varying().stream().mapToLong(f -> f.levels().size()).sum();
    return (int) Math.min(options.draws(), DRAWN_NUMBERS / Math.max(1, levels));
  }

  /** Averages over the same conditions in other draws of the same fit. */
  Averaging with(TakeDraws others) {
    return new Averaging(fit, others, conditions);
  }

  TakeFit fit() {
    return fit;
  }

  TakeDraws draws() {
    return draws;
  }

  int count() {
    return draws.count();
  }

  /** The levels a column has in the fit, in the order of {@link #takes}. */
  List<String> levels(String column) {
    return Swap.varies(fit, column) ? fit.varying(column).levels() : design.levels(column);
  }

  /** Whether the fit has the column, fixed or varying. */
  boolean knows(String column) {
    return Swap.varies(fit, column) || design.adjustsFor(column);
  }

  /**
   * Average takes by level.
   *
   * @param column fixed or varying column of levels
   * @return one row a draw, one take a level
   */
  double[][] takes(String column) {
    return takes(Swap.ofLevels(fit, draws, conditions, column, levels(column)));
  }

  /**
   * Average takes along a column of numbers.
   *
   * @param column adjusted column of numbers
   * @param values in the column's unit
   * @return one row a draw, one take a value
   */
  double[][] takes(String column, double[] values) {
    return takes(Swap.ofValues(fit, draws, conditions, column, values));
  }

  /** What each level contributes to the logit, one row a draw. */
  double[][] logits(String column) {
    Swap swap = Swap.ofLevels(fit, draws, conditions, column, levels(column));
    return IntStream.range(0, count()).mapToObj(swap::contributions).toArray(double[][]::new);
  }

  private double[][] takes(Swap swap) {
    return IntStream.range(0, count())
        .parallel()
        .mapToObj(
            d -> {
              MeanTake mean = MeanTake.of(swap.rest(d, eta[d]), conditions.weights());
              return Arrays.stream(swap.contributions(d)).map(mean::at).toArray();
            })
        .toArray(double[][]::new);
  }

  /** Share of the grafts each level of a column has. */
  double[] shares(String column) {
    TakeCount[] counts = Counted.byLevel(fit.cells(), column, levels(column));
    double total = fit.cells().graftsTotal();
    return Arrays.stream(counts).mapToDouble(count -> count.grafts() / total).toArray();
  }
}
