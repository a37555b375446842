package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.compare.LikelihoodRatioTest;
import org.taketally.records.columns.RecordColumn;

/**
 * Whether swapping two rootstocks moves single cultivars beyond the margin, some up and some down,
 * so that their average says little about any of them.
 *
 * @param probability that there are two levels of which one takes more by the margin on one
 *     cultivar, and less by the margin on another, 0 to 1
 * @param pValue how often pairings that don't differ would spread as much, 0 to 1
 * @param example the pair of levels, and the cultivars, most surely so
 */
record CultivarSwaps(
    double probability, double pValue, Optional<FactorVerdict.CultivarSwap> example) {

  static Optional<CultivarSwaps> of(MarginalTakes free, String factor, AnswerOptions options) {
    if (!factor.equals(RecordColumn.ROOTSTOCK.columnName()) || free.fit().isLarge()) {
      return Optional.empty();
    }
    return free.takesByPartner(factor).map(takes -> of(free, factor, takes, options.margin()));
  }

  private static CultivarSwaps of(
      MarginalTakes free, String factor, double[][][] takes, double margin) {
    int both = 0;
    for (double[][] draw : takes) {
      both += anyBothWays(draw, margin) ? 1 : 0;
    }
    double probability = (double) both / takes.length;
    return probability < VerdictRules.SURE
        ? new CultivarSwaps(probability, 1, Optional.empty())
        : new CultivarSwaps(
            probability, pairingsByChance(free.fit()), example(free, factor, takes, margin));
  }

  private static double pairingsByChance(TakeFit fit) {
    return LikelihoodRatioTest.of(
            TakeModel.of(fit.model()).without(TakeModel.PAIRING).fit(fit.cells()), fit)
        .pValue();
  }

  private static boolean anyBothWays(double[][] draw, double margin) {
    for (int a = 0; a < draw[0].length; a++) {
      for (int b = 0; b < a; b++) {
        boolean more = false;
        boolean less = false;
        for (double[] cultivar : draw) {
          more |= cultivar[a] - cultivar[b] > margin;
          less |= cultivar[b] - cultivar[a] > margin;
        }
        if (more && less) {
          return true;
        }
      }
    }
    return false;
  }

  /** The pair whose surest cultivar each way is surest. */
  private static Optional<FactorVerdict.CultivarSwap> example(
      MarginalTakes free, String factor, double[][][] takes, double margin) {
    List<String> levels = free.levels(factor);
    List<String> cultivars = free.fit().cells().factor(RecordColumn.CULTIVAR.columnName()).levels();
    FactorVerdict.CultivarSwap best = null;
    double surest = 0;
    for (int a = 0; a < levels.size(); a++) {
      for (int b = 0; b < a; b++) {
        int more = surest(takes, a, b, margin);
        int less = surest(takes, b, a, margin);
        double sure = Math.min(sure(takes, more, a, b, margin), sure(takes, less, b, a, margin));
        if (best == null || sure > surest) {
          surest = sure;
          best =
              new FactorVerdict.CultivarSwap(
                  levels.get(a), levels.get(b), cultivars.get(more), cultivars.get(less));
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private static int surest(double[][][] takes, int a, int b, double margin) {
    int best = 0;
    for (int c = 1; c < takes[0].length; c++) {
      best = sure(takes, c, a, b, margin) > sure(takes, best, a, b, margin) ? c : best;
    }
    return best;
  }

  private static double sure(double[][][] takes, int cultivar, int a, int b, double margin) {
    int beyond = 0;
    for (double[][] draw : takes) {
      beyond += draw[cultivar][a] - draw[cultivar][b] > margin ? 1 : 0;
    }
    return (double) beyond / takes.length;
  }

  /** Whether it was shown. */
  boolean shown() {
    return probability >= VerdictRules.SURE && pValue < VerdictRules.PAIRINGS_BY_CHANCE;
  }

  List<FactorVerdict.Note> notes() {
    List<FactorVerdict.Note> notes = new ArrayList<>();
    if (shown()) {
      example.ifPresent(notes::add);
    } else if (probability >= 0.5) {
      notes.add(new FactorVerdict.CultivarsMayDiffer(probability));
    }
    return notes;
  }
}
