package org.taketally.answers.checks;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.taketally.answers.AnswerOptions;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.PlannedLot;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** What a fit to all other cells predicts for one cell: slow, and as exact as the model is. */
final class FitWithoutCell {

  private static final int DRAWS = 1000;

  private final int grafts;
  private final double[] takes;

  private FitWithoutCell(int grafts, double[] takes) {
    this.grafts = grafts;
    this.takes = takes;
  }

  /**
   * Fits again.
   *
   * @param fit of all cells
   * @param cell the one to leave out
   * @param options seed
   * @return empty if the other cells can't be fitted, or lack a level only this cell has
   */
  static Optional<FitWithoutCell> of(TakeFit fit, int cell, AnswerOptions options) {
    Cells cells = fit.cells();
    try {
      TakeFit others = TakeModel.of(fit.model()).fit(cells.where(i -> i != cell));
      double[] takes = others.predict(lot(fit, cell), others.draws(DRAWS, options.seed())).draws();
      return Optional.of(new FitWithoutCell(cells.grafts(cell), takes));
    } catch (CannotFit | IllegalArgumentException onlyThisCell) {
      return Optional.empty();
    }
  }

  /** The cell's own conditions; a row's luck of its own is unknown without it. */
  private static PlannedLot lot(TakeFit fit, int cell) {
    PlannedLot lot = PlannedLot.any();
    for (String column : fit.model().columns()) {
      Optional<Factor> factor =
          fit.cells().findFactor(column).filter(f -> !column.equals(Cells.BATCH_ROW));
      OptionalDouble number =
          fit.cells().findMeasure(column).stream()
              .mapToDouble(measure -> measure.value(cell))
              .findFirst();
      if (factor.isPresent()) {
        lot = lot.with(column, factor.get().levels().get(factor.get().code(cell)));
      } else if (number.isPresent()) {
        lot = lot.with(column, number.getAsDouble());
      }
    }
    return lot;
  }

  /** Chance of take, 0 to 1. */
  double predicted() {
    return Arrays.stream(takes).average().orElseThrow();
  }

  /** Chance that none of the cell's grafts take, or that all do. */
  double probabilityOf(boolean none) {
    return Arrays.stream(takes)
        .map(take -> Math.pow(none ? 1 - take : take, grafts))
        .average()
        .orElseThrow();
  }
}
