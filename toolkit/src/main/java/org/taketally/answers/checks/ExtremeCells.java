package org.taketally.answers.checks;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.Words;
import org.taketally.answers.checks.FitChecks.Check;
import org.taketally.answers.checks.FitChecks.ExtremeCell;
import org.taketally.answers.checks.FitChecks.State;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** Cells of which none or all took although the other cells made that very unlikely. */
final class ExtremeCells {

  private static final String NAME = "cells with none or all taken";

  /** Wrong alarms to expect over all cells together, at most (Bonferroni). */
  private static final double FALSE_ALARMS = 0.01;

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

  List<ExtremeCell> unexpected() {
    double rare = FALSE_ALARMS / cells.size();
    return IntStream.range(0, cells.size())
        .filter(i -> cells.takes()[i] == 0 || cells.takes()[i] == cells.grafts()[i])
        .filter(i -> chance(i) < rare)
        .boxed()
        .sorted(Comparator.comparingDouble(this::chance))
        .map(
            i ->
                new ExtremeCell(
                    words(i),
                    new TakeCount(cells.takes()[i], cells.grafts()[i]),
                    leftOut.predicted(i)))
        .toList();
  }

  private double chance(int cell) {
    int takes = cells.takes()[cell];
    return takes == 0
        ? leftOut.chanceOfAtMost(0, cell)
        : 1 - leftOut.chanceOfAtMost(takes - 1, cell);
  }

  private String words(int cell) {
    List<String> parts =
        fit.model().columns().stream()
            .filter(column -> !column.equals(TakeModel.PAIRING))
            .map(column -> part(column, cell))
            .filter(part -> !part.isEmpty())
            .toList();
    return String.join(", ", parts);
  }

  private String part(String column, int cell) {
    Factor factor = cells.findFactor(column).orElse(null);
    if (factor != null) {
      String shown = GrafterLabels.shown(factor, options).get(factor.codes()[cell]);
      return column.equals(GrafterLabels.GRAFTER) && !options.grafterNames()
          ? shown
          : Words.column(column) + " " + shown;
    }
    return cells
        .findMeasure(column)
        .map(m -> Words.column(column) + " " + Words.amount(m.values()[cell], ""))
        .orElse("");
  }

  static Check check(List<ExtremeCell> extremes) {
    if (extremes.isEmpty()) {
      return new Check(NAME, State.FINE, 0, "none that the other grafts make unlikely.", "");
    }
    ExtremeCell first = extremes.get(0);
    return new Check(
        NAME,
        State.LOOK,
        extremes.size(),
        "%s where that was very unlikely; first: %s, %s of %s where about %s was expected."
            .formatted(
                Words.count(extremes.size(), "cell"),
                first.cell(),
                Words.count(first.tally().takes(), "take"),
                Words.count(first.tally().grafts(), "graft"),
                Words.percent(first.predicted())),
        "Look these up in the record book: a lost lot, a mix-up of labels or of the counts is more"
            + " likely than chance.");
  }
}
