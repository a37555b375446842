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
 * @param levels rootstocks
 * @param cultivars cultivars
 * @param takes for each draw one row a cultivar, one take a rootstock
 * @param margin the margin, 0 to 1
 */
record CultivarSwaps(
    double probability,
    double pValue,
    List<String> levels,
    List<String> cultivars,
    double[][][] takes,
    double margin) {

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
    return new CultivarSwaps(
        probability,
        probability < VerdictRules.SURE ? 1 : pairingsByChance(free.fit()),
        free.levels(factor),
        free.fit().cells().factor(RecordColumn.CULTIVAR.columnName()).levels(),
        takes,
        margin);
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
  private Optional<FactorVerdict.CultivarSwap> example() {
    FactorVerdict.CultivarSwap best = null;
    int surest = -1;
    for (int a = 0; a < levels.size(); a++) {
      for (int b = 0; b < a; b++) {
        int[] more = drawsBeyond(a, b);
        int[] less = drawsBeyond(b, a);
        int moreSurely = largest(more);
        int lessSurely = largest(less);
        int sure = Math.min(more[moreSurely], less[lessSurely]);
        if (sure > surest) {
          surest = sure;
          best =
              new FactorVerdict.CultivarSwap(
                  levels.get(a),
                  levels.get(b),
                  cultivars.get(moreSurely),
                  cultivars.get(lessSurely));
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** Draws in which level a takes better than b by more than the margin, one count a cultivar. */
  private int[] drawsBeyond(int a, int b) {
    int[] beyond = new int[cultivars.size()];
    for (double[][] draw : takes) {
      for (int c = 0; c < beyond.length; c++) {
        beyond[c] += draw[c][a] - draw[c][b] > margin ? 1 : 0;
      }
    }
    return beyond;
  }

  private static int largest(int[] counts) {
    int best = 0;
    for (int c = 1; c < counts.length; c++) {
      best = counts[c] > counts[best] ? c : best;
    }
    return best;
  }

  /** Whether it was shown. */
  boolean shown() {
    return probability >= VerdictRules.SURE && pValue < VerdictRules.PAIRINGS_BY_CHANCE;
  }

  List<FactorVerdict.Note> notes() {
    List<FactorVerdict.Note> notes = new ArrayList<>();
    if (shown()) {
      example().ifPresent(notes::add);
    } else if (probability >= 0.5) {
      notes.add(new FactorVerdict.CultivarsMayDiffer(probability));
    }
    return notes;
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(probability);
  }
}
