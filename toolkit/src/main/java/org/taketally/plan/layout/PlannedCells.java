package org.taketally.plan.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Provenance;

/** The cells that a layout's records will have, one a plot, with no takes yet. */
public final class PlannedCells {

  private PlannedCells() {}

  /**
   * Cells of a layout.
   *
   * @param layout which graft goes where
   * @return one cell a plot: cultivar, rootstock, pairing, grafter, grafting_day, block, and as
   *     many grafts as the plot holds; takes all 0
   */
  public static Cells of(TrialLayout layout) {
    List<Factor> factors = new ArrayList<>();
    factors.add(
        factor(layout, RecordColumn.CULTIVAR.columnName(), plot -> plot.pairing().cultivar()));
    factors.add(
        factor(layout, RecordColumn.ROOTSTOCK.columnName(), plot -> plot.pairing().rootstock()));
    factors.add(
        factor(
            layout,
            DerivedColumn.PAIRING.columnName(),
            plot -> plot.pairing().cultivar() + " × " + plot.pairing().rootstock()));
    factors.add(
        factor(layout, RecordColumn.GRAFTER.columnName(), plot -> plot.session().grafter()));
    factors.add(
        factor(layout, DerivedColumn.GRAFTING_DAY.columnName(), plot -> plot.session().day()));
    factors.add(
        factor(layout, RecordColumn.BLOCK.columnName(), plot -> plot.bed().orElse(plot.block())));
    int[] grafts = layout.plots().stream().mapToInt(Plot::grafts).toArray();
    return new Cells(
        factors,
        List.of(),
        grafts,
        new int[grafts.length],
        0,
        Provenance.of("planned trial, seed " + layout.plan().seed(), grafts.length));
  }

  private static Factor factor(TrialLayout layout, String name, Function<Plot, String> level) {
    List<String> levels = layout.plots().stream().map(level).distinct().sorted().toList();
    int[] codes =
        layout.plots().stream().mapToInt(plot -> levels.indexOf(level.apply(plot))).toArray();
    return new Factor(name, levels, codes);
  }
}
