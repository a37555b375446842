package org.taketally.answers;

import java.util.Optional;
import org.taketally.cells.Cells;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.terms.Interval;

/** Works out a {@link RootstockVerdict}: the stock's type, its condition, and the side views. */
final class RootstockVerdicts {

  private static final String CONDITION = "stock_condition";

  /** Share of nucellar seedlings true to type that is supposed; see docs/methods.md. */
  private static final Interval TRUE_TO_TYPE = new Interval(0.80, 0.90, 0.95);

  private RootstockVerdicts() {}

  static RootstockVerdict of(TakeModel model, Cells cells, AnswerOptions options) {
    String compared = model.compared().orElse("rootstock");
    try {
      TakeFit fit = SturdyFit.of(cells, model.compare(compared)).fit();
      Averaging averaging = new Averaging(fit, options);
      return averaging.knows(compared)
          ? of(averaging, compared, options)
          : RootstockVerdict.of(FactorVerdicts.refused(fit.cells(), compared, options));
    } catch (CannotFit problem) {
      if (problem.reason() == CannotFit.Reason.ALL_TOOK
          || problem.reason() == CannotFit.Reason.NONE_TOOK) {
        return RootstockVerdict.of(FactorVerdicts.byCounts(cells, compared, options));
      }
      throw problem;
    }
  }

  static RootstockVerdict of(Averaging averaging, String compared, AnswerOptions options) {
    FactorVerdict type = FactorVerdicts.of(averaging, compared, options);
    Optional<FactorVerdict> condition =
        !compared.equals(CONDITION) && averaging.knows(CONDITION)
            ? Optional.of(FactorVerdicts.of(averaging, CONDITION, options))
            : Optional.empty();
    return new RootstockVerdict(
        type,
        condition,
        compared.equals("rootstock") && Swap.varies(averaging.fit(), TakeModel.PAIRING)
            ? Optional.of(Pairings.of(averaging, options))
            : Optional.empty(),
        ByHand.of(averaging.fit().cells(), type, options),
        type.size().filter(s -> compared.equals("rootstock")).map(RootstockVerdicts::offType));
  }

  /** A mix of true seedlings and off-types dilutes a difference in proportion to the true ones. */
  private static RootstockVerdict.OffType offType(FactorVerdict.Size size) {
    double largest = size.largest().value();
    double pure = Math.min(1, largest / TRUE_TO_TYPE.low());
    double high = Math.min(1, size.largest().high() / TRUE_TO_TYPE.low());
    return new RootstockVerdict.OffType(
        TRUE_TO_TYPE,
        largest,
        pure,
        "If the stocks are seedlings and only %s of them are true to type, a real difference looks smaller than it is: among stocks true to type the largest gap would be up to %s (likely under %s)."
            .formatted(Words.percents(TRUE_TO_TYPE), Words.points(pure), Words.points(high)));
  }
}
