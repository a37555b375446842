package org.taketally.answers.checks;

import java.util.ArrayList;
import java.util.List;
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

  /** About equally many grafts in each; cells aren't split, so there may be fewer than ten. */
  public static List<Tenth> tenths(Cells cells, double[] predicted) {
    List<Tenth> tenths = new ArrayList<>();
    double total = cells.graftsTotal();
    long seen = 0;
    long grafts = 0;
    long takes = 0;
    double expected = 0;
    for (int i : LeftOutCells.order(predicted)) {
      grafts += cells.grafts(i);
      takes += cells.takes(i);
      expected += cells.grafts(i) * predicted[i];
      if (seen + grafts >= total * (tenths.size() + 1) / TENTHS - 1e-9) {
        tenths.add(new Tenth(expected / grafts, new TakeCount(takes, grafts)));
        seen += grafts;
        grafts = 0;
        takes = 0;
        expected = 0;
      }
    }
    return tenths;
  }

  static Check check(List<Tenth> tenths) {
    double statistic = tenths.stream().mapToDouble(Calibration::square).sum();
    double chance = ChiSquaredDistribution.of(tenths.size()).survivalProbability(statistic);
    Tenth worst =
        tenths.stream().max(java.util.Comparator.comparingDouble(Calibration::gap)).orElseThrow();
    State state = State.FINE;
    if (chance < RARE && gap(worst) > LOOK) {
      state = gap(worst) > WRONG ? State.WRONG : State.LOOK;
    }
    return new Check(
        CheckKind.CALIBRATION, state, gap(worst), new FitChecks.LargestGap(worst, tenths.size()));
  }

  private static double gap(Tenth tenth) {
    return Math.abs(tenth.predicted() - tenth.tally().rate());
  }

  private static double square(Tenth tenth) {
    double p = tenth.predicted();
    double n = tenth.tally().grafts();
    return Math.pow(tenth.tally().takes() - n * p, 2) / Math.max(1e-9, n * p * (1 - p));
  }
}
