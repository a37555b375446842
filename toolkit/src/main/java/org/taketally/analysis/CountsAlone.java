package org.taketally.analysis;

import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.answers.verdict.RootstockVerdictCalculator;
import org.taketally.cells.Cells;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeModel;

/**
 * What can still be said where none or all grafts took: no model can be fitted, but whether the
 * compared column, usually the rootstock, makes a practical difference the counts may tell.
 *
 * @param verdict by counts alone
 * @param why what kept a model from being fitted, a sentence with a remedy
 */
public record CountsAlone(RootstockVerdict verdict, String why) {

  /**
   * After a model could not be fitted.
   *
   * @param cells the records
   * @param model that was to be fitted
   * @param options margin, level, draws, seed
   * @param problem why it could not
   * @return empty if something else than none or all taking was the reason, or nothing can be
   *     compared
   */
  public static Optional<CountsAlone> of(
      Cells cells, TakeModel model, AnswerOptions options, CannotFit problem) {
    boolean alike =
        problem.reason() == CannotFit.Reason.ALL_TOOK
            || problem.reason() == CannotFit.Reason.NONE_TOOK;
    boolean comparable =
        model.compared().flatMap(cells::findFactor).filter(f -> f.levelsMet() > 1).isPresent();
    if (!alike || !comparable) {
      return Optional.empty();
    }
    return Optional.of(
        new CountsAlone(
            RootstockVerdictCalculator.of(model, cells, options), problem.getMessage()));
  }
}
