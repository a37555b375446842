package org.taketally.answers.checks;

import java.util.stream.IntStream;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.CheckKind;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.cells.Cells;

/**
 * Whether takes scatter more, or less, between cells than chance allows: mean square of the
 * standardised residuals of cells with two grafts or more, 1 if the model fits.
 *
 * <p>The variance of one square is 2 + (1 - 6pq) / (npq) (McCullagh and Nelder 1989, section 4.4).
 * Single grafts say nothing about it.
 */
final class Scatter {

  private static final CheckKind KIND = CheckKind.SCATTER_BETWEEN_CELLS;
  private static final int LEAST_CELLS = 20;
  private static final double LEAST_EXPECTED = 0.5;
  private static final double FAR = 3;
  private static final double LOOK = 1.1;
  private static final double WRONG = 1.3;
  private static final double TOO_EVEN = 0.8;

  private Scatter() {}

  static Check of(LeftOutCells leftOut) {
    Cells cells = leftOut.cells();
    int[] several =
        IntStream.range(0, cells.size())
            .filter(i -> cells.grafts(i) >= 2 && expected(leftOut, i) >= LEAST_EXPECTED)
            .toArray();
    if (several.length < LEAST_CELLS) {
      return new Check(KIND, State.NOT_CHECKABLE, Double.NaN, new FitChecks.GraftsStandAlone());
    }
    double ratio =
        IntStream.of(several)
            .mapToDouble(i -> Math.pow(leftOut.standardised(i), 2))
            .average()
            .orElseThrow();
    double variance = IntStream.of(several).mapToDouble(i -> variance(leftOut, i)).sum();
    double z = several.length * (ratio - 1) / Math.sqrt(variance);
    return check(ratio, z, several.length);
  }

  /** Expected takes or failures, whichever is fewer; squares of rarer counts are too wild. */
  private static double expected(LeftOutCells leftOut, int cell) {
    double take = leftOut.predicted(cell);
    return leftOut.cells().grafts(cell) * Math.min(take, 1 - take);
  }

  private static double variance(LeftOutCells leftOut, int cell) {
    double p = leftOut.predicted(cell);
    double pq = p * (1 - p);
    return 2 + (1 - 6 * pq) / (leftOut.cells().grafts(cell) * pq);
  }

  private static Check check(double ratio, double z, int cells) {
    State state = State.FINE;
    if (z > FAR && ratio > LOOK) {
      state = ratio > WRONG ? State.WRONG : State.LOOK;
    } else if (z < -FAR && ratio < TOO_EVEN) {
      state = State.LOOK;
    }
    return new Check(KIND, state, ratio, new FitChecks.CellScatter(ratio, cells));
  }
}
