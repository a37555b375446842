package org.taketally.plan.forecast;

import java.util.List;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.RecordColumn;

/** The fit that lots to come are forecast by. */
public final class PastSeasons {

  private PastSeasons() {}

  /**
   * Fits past records: the model that suits them, with rootstocks varying around a common mean, so
   * that a stock nobody has grafted yet is no bar.
   *
   * @param records of past seasons
   * @return the fit
   * @throws org.taketally.model.CannotFit if the records let nothing be expected, saying why
   * @throws org.taketally.records.problems.RecordsUnreadable if they read two ways and nobody has
   *     said which
   */
  public static TakeFit fit(GraftRecords records) {
    records.check().requireSettled();
    List<String> names = records.frame().columnNames();
    Cells cells =
        CellsOf.records(
            records, SuggestedModel.columns().stream().filter(names::contains).toList());
    TakeModel model = SuggestedModel.of(cells).model();
    return (model.compared().isPresent()
            ? model.varyBy(RecordColumn.ROOTSTOCK.columnName())
            : model)
        .fit(cells);
  }
}
