package org.taketally.answers.verdict;

import java.util.Arrays;
import java.util.OptionalLong;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.AnswerOptions;

/**
 * What the records could have shown, and how many more grafts would settle the question. Uses the
 * noise of the draws of free levels; with f times the grafts, spread as in the records, noise is
 * smaller by the square root of f.
 */
final class DetectableCalculator {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  /** How many times the grafts are tried, in this order. */
  private static final double[] TIMES = {1.1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 7, 10, 14, 20, 30};

  private final PairDifferences free;
  private final AnswerOptions options;

  /**
   * From the precision of the pairs.
   *
   * @param free differences of the free levels
   * @param options margin and level
   */
  DetectableCalculator(PairDifferences free, AnswerOptions options) {
    this.free = free;
    this.options = options;
  }

  FactorVerdict.Detectable detectable(Verdict verdict, long grafts) {
    double[] errors = free.standardErrors();
    double typical = Arrays.stream(errors).sorted().toArray()[errors.length / 2];
    double steps = free.reach(VerdictRules.AT_ONCE) + z(VerdictRules.POWER);
    double smallest = Math.min(1, typical * steps);
    double margin = Math.min(1, smallestMargin(errors));
    OptionalLong more =
        verdict == Verdict.CANT_TELL_YET || verdict == Verdict.DIFFERS_UNSETTLED
            ? moreGrafts(errors, grafts)
            : OptionalLong.empty();
    return new FactorVerdict.Detectable(smallest, margin, more);
  }

  /** Margin within which levels truly alike pass all one-sided tests, with the stated power. */
  private double smallestMargin(double[] errors) {
    double[] needed = new double[free.draws()];
    double reach = z(VerdictRules.ONE_SIDED);
    for (int d = 0; d < needed.length; d++) {
      for (int k = 0; k < errors.length; k++) {
        needed[d] = Math.max(needed[d], Math.abs(free.noise(d, k)) + reach * errors[k]);
      }
    }
    Arrays.sort(needed);
    return needed[(int) Math.ceil(VerdictRules.POWER * needed.length) - 1];
  }

  private OptionalLong moreGrafts(double[] errors, long grafts) {
    for (double times : TIMES) {
      if (settled(errors, Math.sqrt(times)) >= VerdictRules.POWER) {
        return OptionalLong.of(roundUp(grafts * (times - 1)));
      }
    }
    return OptionalLong.empty();
  }

  /** Share of sets of records, noise divided by {@code shrink}, that would give an answer. */
  private double settled(double[] errors, double shrink) {
    double alone = z(VerdictRules.ONE_SIDED);
    double atOnce = free.reach(VerdictRules.BEYOND);
    int settled = 0;
    for (int d = 0; d < free.draws(); d++) {
      boolean equivalent = true;
      boolean beyond = false;
      for (int k = 0; k < errors.length; k++) {
        double seen = Math.abs(free.difference(k) + free.noise(d, k) / shrink);
        equivalent &= seen + alone * errors[k] / shrink < options.margin();
        beyond |= seen - atOnce * errors[k] / shrink > options.margin();
      }
      settled += equivalent || beyond ? 1 : 0;
    }
    return (double) settled / free.draws();
  }

  /** To two figures, upward. */
  static long roundUp(double count) {
    double step = Math.pow(10, Math.max(0, Math.floor(Math.log10(Math.max(1, count))) - 1));
    return (long) (Math.ceil(count / step) * step);
  }

  private static double z(double p) {
    return NORMAL.inverseCumulativeProbability(p);
  }
}
