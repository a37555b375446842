package org.taketally.answers.checks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Condition;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.CheckKind;
import org.taketally.answers.checks.FitChecks.ExtremeCell;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** Cells of which none or all took although the other cells made that very unlikely. */
final class ExtremeCells {

  /** Wrong alarms to expect over all cells together, at most (Bonferroni). */
  private static final double FALSE_ALARMS = 0.01;

  /** Cells looked at again by a fit without them; records with more lost lots need no proof. */
  private static final int MOST_FITTED = 10;

  private final TakeFit fit;
  private final Cells cells;
  private final LeftOutCells leftOut;
  private final AnswerOptions options;

  ExtremeCells(TakeFit fit, LeftOutCells leftOut, AnswerOptions options) {
    this.fit = fit;
    this.cells = fit.cells();
    this.leftOut = leftOut;
    this.options = options;
  }

  /** Those found in passing, the first of them by fitting again without them. */
  List<ExtremeCell> unexpected() {
    double rare = FALSE_ALARMS / cells.size();
    List<Integer> suspects =
        IntStream.range(0, cells.size())
            .filter(i -> cells.takes(i) == 0 || cells.takes(i) == cells.grafts(i))
            .filter(i -> probability(i) < rare)
            .boxed()
            .sorted(Comparator.comparingDouble(this::probability))
            .toList();
    boolean again = !fit.isLarge() && cells.size() <= LeaveOneSeasonOut.REFIT_CELLS;
    List<ExtremeCell> found = new ArrayList<>();
    for (int k = 0; k < suspects.size(); k++) {
      int cell = suspects.get(k);
      if (again && k < MOST_FITTED) {
        FitWithoutCell.of(fit, cell, options)
            .filter(without -> without.probabilityOf(cells.takes(cell) == 0) < rare)
            .ifPresent(without -> found.add(extreme(cell, without.predicted())));
      } else {
        found.add(extreme(cell, leftOut.predicted(cell)));
      }
    }
    return found;
  }

  private ExtremeCell extreme(int cell, double predicted) {
    return new ExtremeCell(
        conditions(cell), new TakeCount(cells.takes(cell), cells.grafts(cell)), predicted);
  }

  private double probability(int cell) {
    int takes = cells.takes(cell);
    return takes == 0
        ? leftOut.probabilityOfAtMost(0, cell)
        : 1 - leftOut.probabilityOfAtMost(takes - 1, cell);
  }

  private List<Condition> conditions(int cell) {
    return fit.model().columns().stream()
        .filter(column -> !column.equals(TakeModel.PAIRING))
        .flatMap(column -> condition(column, cell).stream())
        .toList();
  }

  private Optional<Condition> condition(String column, int cell) {
    Optional<Condition> level =
        cells
            .findFactor(column)
            .map(
                factor ->
                    Condition.level(
                        column, GrafterLabels.shown(factor, options).get(factor.code(cell))));
    return level.isPresent()
        ? level
        : cells.findMeasure(column).map(m -> Condition.number(column, m.value(cell)));
  }

  static Check check(List<ExtremeCell> extremes) {
    return new Check(
        CheckKind.NONE_OR_ALL_TAKEN,
        extremes.isEmpty() ? State.FINE : State.LOOK,
        extremes.size(),
        new FitChecks.UnexpectedCells(extremes));
  }
}
