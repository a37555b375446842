package org.taketally.answers.checks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.CheckKind;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;

/**
 * Predicted against counted take, by tenths of the grafts in order of the prediction.
 *
 * @see <a href="https://doi.org/10.1080/03610928008827941">Hosmer and Lemeshow (1980)</a>
 */
public final class Calibration {

  private static final int TENTHS = 10;
  private static final double RARE = 0.01;
  private static final double LOOK = 0.03;
  private static final double WRONG = 0.10;

  private Calibration() {}

  /** A tenth, and the variance of its takes given what was predicted. */
  private record Judged(Tenth tenth, double variance) {
    double square() {
      double off = tenth.tally().takes() - tenth.tally().grafts() * tenth.predicted();
      return off * off / Math.max(1e-9, variance);
    }
  }

  /** About equally many grafts in each; cells aren't split, so there may be fewer than ten. */
  public static List<Tenth> tenths(Cells cells, double[] predicted) {
    return tenths(judged(cells, predicted, LeftOutCells.order(predicted), i -> 0));
  }

  /**
   * Of the cells of a fit, in the order of what the fit says of levels that many cells share. In
   * the order of what all others say of a cell the lucky ones of a group would come first, since
   * without them the others look worse; in the order of the whole fit they would come last.
   */
  static List<Tenth> tenths(LeftOutCells leftOut) {
    return tenths(judged(leftOut));
  }

  private static List<Tenth> tenths(List<Judged> judged) {
    return judged.stream().map(Judged::tenth).toList();
  }

  private static List<Judged> judged(LeftOutCells leftOut) {
    return judged(
        leftOut.cells(),
        leftOut.predicted(),
        LeftOutCells.order(leftOut.shared()),
        leftOut::variance);
  }

  private static List<Judged> judged(
      Cells cells, double[] predicted, int[] order, IntToDoubleFunction variance) {
    List<Judged> tenths = new ArrayList<>();
    double total = cells.graftsTotal();
    long seen = 0;
    long grafts = 0;
    long takes = 0;
    double expected = 0;
    double spread = 0;
    for (int i : order) {
      grafts += cells.grafts(i);
      takes += cells.takes(i);
      expected += cells.grafts(i) * predicted[i];
      spread += variance.applyAsDouble(i);
      if (seen + grafts >= total * (tenths.size() + 1) / TENTHS - 1e-9) {
        tenths.add(new Judged(new Tenth(expected / grafts, new TakeCount(takes, grafts)), spread));
        seen += grafts;
        grafts = 0;
        takes = 0;
        expected = 0;
        spread = 0;
      }
    }
    return tenths;
  }

  /**
   * Takes of rows that share luck scatter more than those of single grafts; both are allowed for.
   */
  static Check check(LeftOutCells leftOut) {
    List<Judged> tenths = judged(leftOut);
    double statistic = tenths.stream().mapToDouble(Judged::square).sum();
    double pValue = ChiSquaredDistribution.of(tenths.size()).survivalProbability(statistic);
    Tenth worst =
        tenths.stream()
            .map(Judged::tenth)
            .max(Comparator.comparingDouble(Calibration::gap))
            .orElseThrow();
    State state = State.FINE;
    if (pValue < RARE && gap(worst) > LOOK) {
      state = gap(worst) > WRONG ? State.WRONG : State.LOOK;
    }
    return new Check(
        CheckKind.CALIBRATION, state, gap(worst), new FitChecks.LargestGap(worst, tenths.size()));
  }

  private static double gap(Tenth tenth) {
    return Math.abs(tenth.predicted() - tenth.tally().rate());
  }
}
