package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.confounding.ConfoundingCalculator;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;

/**
 * The fit on levels that can be compared, batches allowed for if the levels changed between them.
 *
 * @param main draws of that fit
 * @param batchesAdded columns of batches that the model lacked
 */
record ComparableFit(MarginalTakes main, List<String> batchesAdded) {

  ComparableFit {
    batchesAdded = List.copyOf(batchesAdded);
  }

  /** What hangs together in some cells, as far as a column is concerned. */
  static Confounding confounding(Cells cells, String factor, AnswerOptions options) {
    return ConfoundingCalculator.of(withoutPairings(cells), factor, options);
  }

  /** Only the columns that could entangle: pairings are made of the factor itself. */
  private static Cells withoutPairings(Cells cells) {
    return new Cells(
        cells.factors().stream().filter(f -> !isMade(f.name())).toList(),
        List.of(),
        cells.grafts(),
        cells.takes(),
        cells.logCoefficients(),
        cells.provenance());
  }

  private static boolean isMade(String column) {
    return column.equals(TakeModel.PAIRING)
        || column.contains(" \u00d7 ")
        || column.equals(Cells.BATCH_ROW);
  }

  /** The fit in hand where it will do, else another one. */
  static ComparableFit of(
      MarginalTakes main, Confounding confounding, List<String> kept, AnswerOptions options) {
    Cells cells = main.fit().cells();
    if (confounding.groups().size() > 1) {
      Factor column = cells.factor(confounding.compared());
      cells =
          cells.where(
              i -> column.code(i) >= 0 && kept.contains(column.levels().get(column.code(i))));
    }
    TakeModel model = TakeModel.of(main.fit().model());
    List<String> added = new ArrayList<>();
    for (Confounding.Tie tie : confounding.ties()) {
      boolean unmodelled =
          tie.kind() == Confounding.TieKind.BETWEEN_BATCHES
              && !model.columns().contains(tie.other());
      if (unmodelled) {
        model = model.varyBy(tie.other());
        added.add(tie.other());
      }
    }
    boolean inHand = cells == main.fit().cells() && added.isEmpty();
    return new ComparableFit(
        inHand ? main : MarginalTakes.of(FallbackFit.of(cells, model).fit(), options), added);
  }
}
