package org.taketally.answers;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;

/**
 * Average takes as if every graft had one level of a column, all else as recorded, in each
 * posterior draw.
 *
 * <pre>
 *   eta    logit of take of a cell in a draw
 *   swap   the part of eta that the column contributes to a cell
 *   e      what a level would contribute instead
 *   take   sum[grafts * logistic(eta - swap + e)] / sum[grafts]
 * </pre>
 *
 * Up to {@value #EXACT_CELLS} cells {@code eta} is worked out anew in each draw. Above that, its
 * distribution over the cells is taken at the estimates and only moved by the draw's mean.
 */
final class Averaging {

  private static final int EXACT_CELLS = 50_000;
  private static final long DRAWN_NUMBERS = 40_000_000;

  private final TakeFit fit;
  private final TakeDesign design;
  private final TakeDraws draws;
  private final Cells cells;
  private final double[] weights;
  private final Pooled pooled;

  Averaging(TakeFit fit, AnswerOptions options) {
    this.fit = fit;
    this.design = fit.design();
    this.cells = fit.cells();
    long levels = fit.varying().stream().mapToLong(f -> f.levels().size()).sum();
    long affordable = DRAWN_NUMBERS / Math.max(1, levels);
    this.draws = fit.draws((int) Math.min(options.draws(), affordable), options.seed());
    double total = cells.graftsTotal();
    this.weights = Arrays.stream(cells.grafts()).mapToDouble(n -> n / total).toArray();
    this.pooled = cells.size() > EXACT_CELLS ? new Pooled(fit, weights) : null;
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
    return takes(Swap.ofLevels(fit, draws, column, levels(column)));
  }

  /**
   * Average takes along a column of numbers.
   *
   * @param column adjusted column of numbers
   * @param values in the column's unit
   * @return one row a draw, one take a value
   */
  double[][] takes(String column, double[] values) {
    return takes(Swap.ofValues(fit, draws, column, values));
  }

  /** What each level or value contributes to the logit, one row a draw. */
  double[][] logits(String column) {
    Swap swap = Swap.ofLevels(fit, draws, column, levels(column));
    return IntStream.range(0, count()).mapToObj(swap::contributions).toArray(double[][]::new);
  }

  private double[][] takes(Swap swap) {
    MeanTake atEstimates =
        pooled == null ? null : MeanTake.of(swap.restAtEstimates(fit.linearPredictor()), weights);
    return IntStream.range(0, count())
        .parallel()
        .mapToObj(
            d -> {
              MeanTake mean =
                  pooled == null
                      ? MeanTake.of(swap.rest(d, draws.linearPredictor(d)), weights)
                      : atEstimates.movedBy(swap.meanRestChange(d, pooled));
              return Arrays.stream(swap.contributions(d)).map(mean::at).toArray();
            })
        .toArray(double[][]::new);
  }

  /** Share of the grafts each level of a column has. */
  double[] shares(String column) {
    Factor factor = cells.factor(column);
    List<String> levels = levels(column);
    double[] shares = new double[levels.size()];
    int[] place = factor.levels().stream().mapToInt(levels::indexOf).toArray();
    for (int i = 0; i < weights.length; i++) {
      int code = factor.codes()[i];
      if (code != Factor.MISSING && place[code] >= 0) {
        shares[place[code]] += weights[i];
      }
    }
    return shares;
  }

  double[] weights() {
    return weights;
  }
}
