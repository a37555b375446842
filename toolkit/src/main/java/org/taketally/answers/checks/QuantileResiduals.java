package org.taketally.answers.checks;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.CheckKind;
import org.taketally.answers.checks.FitChecks.Quantile;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.terms.SampleQuantiles;

/**
 * Randomised quantile residuals: the chance of the takes a cell showed, spread evenly over each
 * count's share; even between 0 and 1 if the model fits, normal after the normal quantile.
 *
 * @see <a href="https://doi.org/10.1080/10618600.1996.10474708">Dunn and Smyth (1996)</a>
 */
final class QuantileResiduals {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final int QUANTILES = 99;
  private static final int SUM_TERMS = 100_000;
  private static final double SUM_TOLERANCE = 1e-12;

  /** Gap in the distribution that is worth a look, and one that is wrong; common practice. */
  private static final double LOOK = 0.03;

  private static final double WRONG = 0.10;
  private static final double RARE = 0.01;

  private final double[] sorted;

  private QuantileResiduals(double[] even) {
    this.sorted = even;
    Arrays.sort(sorted);
  }

  static QuantileResiduals of(LeftOutCells leftOut, long seed) {
    Random random = new Random(seed);
    double[] where = random.doubles(leftOut.cells().size()).toArray();
    int[] takes = leftOut.cells().takes();
    return new QuantileResiduals(
        IntStream.range(0, takes.length)
            .parallel()
            .mapToDouble(
                i -> {
                  double low = leftOut.probabilityOfAtMost(takes[i] - 1, i);
                  double high = leftOut.probabilityOfAtMost(takes[i], i);
                  return low + where[i] * (high - low);
                })
            .toArray());
  }

  /** At 99 even chances. */
  List<Quantile> quantiles() {
    return IntStream.rangeClosed(1, QUANTILES)
        .mapToObj(k -> quantile((double) k / (QUANTILES + 1)))
        .toList();
  }

  private Quantile quantile(double probability) {
    double found = SampleQuantiles.ofSteps(sorted, probability);
    double kept = Math.min(1 - 1e-12, Math.max(1e-12, found));
    return new Quantile(
        NORMAL.inverseCumulativeProbability(probability),
        NORMAL.inverseCumulativeProbability(kept));
  }

  Check check() {
    double gap = gap();
    double pValue = pValue(gap);
    State state = State.FINE;
    if (pValue < RARE && gap > LOOK) {
      state = gap > WRONG ? State.WRONG : State.LOOK;
    }
    return new Check(
        CheckKind.LEFT_OVER_SCATTER, state, gap, new FitChecks.LeftOver(gap, sorted.length));
  }

  /** Largest gap between the residuals' distribution and an even one. */
  private double gap() {
    int n = sorted.length;
    return IntStream.range(0, n)
        .mapToDouble(k -> Math.max((k + 1.0) / n - sorted[k], sorted[k] - (double) k / n))
        .max()
        .orElse(0);
  }

  private double pValue(double gap) {
    double scaled = gap * Math.sqrt(sorted.length);
    return scaled < 0.3
        ? 1
        : 1 - new KolmogorovSmirnovTest().ksSum(scaled, SUM_TOLERANCE, SUM_TERMS);
  }
}
