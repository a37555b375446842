package org.taketally.answers;

import java.util.OptionalLong;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.cells.Cells;

/** What the records could have shown, and how many more grafts would settle the question. */
final class Detection {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private final double[] standardErrors;
  private final FactorVerdict.Size size;
  private final Cells cells;
  private final AnswerOptions options;

  /**
   * From the precision of the pairs.
   *
   * @param standardErrors standard error of each pair's difference of take, smallest first
   * @param size how large differences are
   * @param cells the records
   * @param options margin and level
   */
  Detection(double[] standardErrors, FactorVerdict.Size size, Cells cells, AnswerOptions options) {
    this.standardErrors = standardErrors;
    this.size = size;
    this.cells = cells;
    this.options = options;
  }

  FactorVerdict.Detectable detectable(Verdict verdict, String factor) {
    double typical = standardErrors[standardErrors.length / 2];
    double worst = standardErrors[standardErrors.length - 1];
    double smallest = Math.min(1, typical * differenceSteps());
    double margin = Math.min(1, worst * equivalenceSteps());
    OptionalLong more =
        verdict == Verdict.CANT_TELL_YET
            ? OptionalLong.of(moreGrafts(worst))
            : OptionalLong.empty();
    String sentence =
        "These records could have shown a difference of %s between two levels of %s in 8 of 10 such sets of records, and \"no difference\" within %s."
            .formatted(Words.points(smallest), Words.column(factor), Words.points(margin));
    return new FactorVerdict.Detectable(smallest, margin, more, sentence);
  }

  /** Standard errors a true difference must span to be seen with the stated power. */
  private double differenceSteps() {
    return z(1 - (1 - options.level()) / 2) + z(VerdictRules.POWER);
  }

  /** Standard errors a margin must span for equivalence of truly equal levels with that power. */
  private static double equivalenceSteps() {
    return z(1 - VerdictRules.ONE_SIDED) + z((1 + VerdictRules.POWER) / 2);
  }

  /**
   * Grafts still needed, spread as in the records: enough to show equivalence of equal levels, or,
   * where the records would do for that, to tell the estimated difference from the margin. A
   * standard error shrinks with the square root of the grafts.
   */
  private long moreGrafts(double worst) {
    double needed = options.margin() / equivalenceSteps();
    if (worst <= needed) {
      double gap =
          Math.max(Math.abs(size.largest().value() - options.margin()), options.margin() / 5);
      needed = Math.min(needed, gap / (z(1 - VerdictRules.ONE_SIDED) + z(VerdictRules.POWER)));
    }
    double factor = Math.max(1.1, Math.pow(worst / needed, 2));
    return roundUp(cells.graftsTotal() * (factor - 1));
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
