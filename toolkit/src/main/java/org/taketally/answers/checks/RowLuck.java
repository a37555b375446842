package org.taketally.answers.checks;

import java.util.stream.IntStream;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.cells.Cells;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.VaryingFactor;

/**
 * What each row of several grafts has of its own beside all that it shares with others: nobody else
 * could have told it.
 */
final class RowLuck {

  /** Level of each cell; empty where rows don't vary. */
  private final int[] codes;

  private final double[] fitted;
  private final double variance;
  private final int none;

  private RowLuck(int[] codes, double[] fitted, double variance, int none) {
    this.codes = codes;
    this.fitted = fitted;
    this.variance = variance;
    this.none = none;
  }

  static RowLuck of(MarginalTakes averaging) {
    TakeFit fit = averaging.fit();
    if (!LevelSubstitution.varies(fit, Cells.BATCH_ROW)) {
      return new RowLuck(new int[0], new double[0], 0, -1);
    }
    VaryingFactor rows = fit.varying(Cells.BATCH_ROW);
    int place = fit.varying().indexOf(rows);
    double variance =
        IntStream.range(0, averaging.count())
            .mapToDouble(d -> averaging.draws().sds(d)[place])
            .map(sd -> sd * sd)
            .average()
            .orElse(0);
    return new RowLuck(
        fit.design().codes(Cells.BATCH_ROW),
        rows.levelEffects(),
        variance,
        rows.levels().indexOf(Cells.SINGLE_GRAFTS));
  }

  private boolean has(int cell) {
    return codes.length > 0 && codes[cell] != none;
  }

  /** Variance of a row's own luck; 0 for single grafts. */
  double variance(int cell) {
    return has(cell) ? variance : 0;
  }

  /** As the fit has it, logits; 0 for single grafts. */
  double fitted(int cell) {
    return has(cell) ? fitted[codes[cell]] : 0;
  }

  /** Logit of each cell in a draw, rows without their own luck. */
  double[] without(TakeDraws draws, int d) {
    double[] eta = draws.linearPredictor(d);
    if (codes.length > 0) {
      double[] own = draws.effects(Cells.BATCH_ROW, d);
      for (int i = 0; i < eta.length; i++) {
        eta[i] -= has(i) ? own[codes[i]] : 0;
      }
    }
    return eta;
  }
}
