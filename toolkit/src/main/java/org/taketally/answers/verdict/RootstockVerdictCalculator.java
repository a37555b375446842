package org.taketally.answers.verdict;

import java.util.Optional;
import java.util.function.Function;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.effects.PairingsCalculator;
import org.taketally.cells.Cells;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Interval;

/** Works out a {@link RootstockVerdict}: the stock's type, its condition, and the side views. */
public final class RootstockVerdictCalculator {

  private static final String CONDITION = RecordColumn.STOCK_CONDITION.columnName();

  /** Share of nucellar seedlings true to type that is supposed; see docs/methods.md. */
  private static final Interval TRUE_TO_TYPE = new Interval(0.80, 0.90, 0.95);

  private RootstockVerdictCalculator() {}

  /**
   * Fits the model, or the nearest one the records can carry, and answers. Where none or all grafts
   * took no model can be fitted, and the verdict rests on the counts alone.
   *
   * @param model what take may depend on; its compared column is the question, {@code rootstock} if
   *     it has none
   * @param cells the records
   * @param options margin, level, draws, seed
   * @return the verdict
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   * @throws IllegalArgumentException if the records lack the compared column
   */
  public static RootstockVerdict of(TakeModel model, Cells cells, AnswerOptions options) {
    return found(
        model, cells, options, RootstockVerdictCalculator::of, RootstockVerdictCalculator::bare);
  }

  /**
   * The verdict on the compared column alone, without side views: no stock condition, pairings or
   * other priors.
   *
   * @param model as for {@link #of(TakeModel, Cells, AnswerOptions)}
   * @param cells the records
   * @param options margin, level, draws, seed
   * @return the verdict
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   * @throws IllegalArgumentException if the records lack the compared column
   */
  public static FactorVerdict ofTypeAlone(TakeModel model, Cells cells, AnswerOptions options) {
    return found(model, cells, options, FactorVerdictCalculator::of, it -> it);
  }

  private interface Fitted<V> {
    V verdict(MarginalTakes averaging, String compared, AnswerOptions options);
  }

  private static <V> V found(
      TakeModel model,
      Cells cells,
      AnswerOptions options,
      Fitted<V> fitted,
      Function<FactorVerdict, V> unfitted) {
    String compared = model.compared().orElse(RecordColumn.ROOTSTOCK.columnName());
    try {
      TakeFit fit = FallbackFit.of(cells, model.compare(compared)).fit();
      MarginalTakes averaging = MarginalTakes.of(fit, options);
      return averaging.knows(compared)
          ? fitted.verdict(averaging, compared, options)
          : unfitted.apply(FactorVerdictCalculator.refused(fit.cells(), compared, options));
    } catch (CannotFit problem) {
      if (problem.reason() == CannotFit.Reason.ALL_TOOK
          || problem.reason() == CannotFit.Reason.NONE_TOOK) {
        return unfitted.apply(FactorVerdictCalculator.byCounts(cells, compared, options));
      }
      throw problem;
    }
  }

  /**
   * Answers from a fit that has the compared column.
   *
   * @param averaging draws of the fit
   * @param compared the column the question is about
   * @param options margin, level, draws, seed
   * @return the verdict
   */
  public static RootstockVerdict of(
      MarginalTakes averaging, String compared, AnswerOptions options) {
    FactorVerdict type =
        PriorsTriedCalculator.added(
            averaging, FactorVerdictCalculator.judged(averaging, compared, options));
    Optional<FactorVerdict> condition =
        !compared.equals(CONDITION) && averaging.knows(CONDITION)
            ? Optional.of(FactorVerdictCalculator.of(averaging, CONDITION, options))
            : Optional.empty();
    return new RootstockVerdict(
        type,
        condition,
        compared.equals(RecordColumn.ROOTSTOCK.columnName())
                && LevelSubstitution.varies(averaging.fit(), TakeModel.PAIRING)
            ? Optional.of(PairingsCalculator.of(averaging, options))
            : Optional.empty(),
        StratifiedComparison.of(averaging.fit().cells(), type, options),
        type.size()
            .filter(s -> compared.equals(RecordColumn.ROOTSTOCK.columnName()))
            .map(RootstockVerdictCalculator::offType));
  }

  /** A mix of true seedlings and off-types dilutes a difference in proportion to the true ones. */
  private static RootstockVerdict.OffType offType(FactorVerdict.Size size) {
    double largest = size.largest().value();
    double pure = Math.min(1, largest / TRUE_TO_TYPE.low());
    double high = Math.min(1, size.largest().high() / TRUE_TO_TYPE.low());
    return new RootstockVerdict.OffType(TRUE_TO_TYPE, largest, pure, high);
  }

  /**
   * The verdict where the column couldn't be kept in the model: what hangs together with what.
   *
   * @param cells the records
   * @param compared the column the question is about
   * @param options margin and level
   * @return entangled
   */
  public static RootstockVerdict refused(Cells cells, String compared, AnswerOptions options) {
    return bare(FactorVerdictCalculator.refused(cells, compared, options));
  }

  /** A verdict without side views. */
  private static RootstockVerdict bare(FactorVerdict type) {
    return new RootstockVerdict(
        type, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }
}
