package org.taketally.figure;

import java.util.List;
import java.util.Locale;
import org.taketally.answers.verdict.MarginCost;
import org.taketally.wording.figures.MarginCostFigureWords;

/** What a saleable tree costs if take drops. */
final class MarginCostFigure {

  private static final double LEAST_TAKE = 0.02;

  private MarginCostFigure() {}

  static String draw(MarginCost cost, FigureSize size) {
    MarginCostFigureWords words = new MarginCostFigureWords(cost);
    List<Line> rows = new java.util.ArrayList<>();
    double most = 0;
    for (MarginCost.Drop drop : cost.drops()) {
      if (drop.take() >= LEAST_TAKE) {
        rows.add(row(drop, words));
        most = drop.perTree();
      }
    }
    Sheet sheet =
        new Sheet(size, words.title(), MarginCostFigureWords.SUBTITLE, words.description());
    Axis axis =
        new Axis(
            0, most * 1.05, MarginCostFigureWords.AXIS, MarginCostFigure::money, List.of(), false);
    RowChart.draw(sheet, rows, axis, "");
    return sheet.svg();
  }

  private static Line row(MarginCost.Drop drop, MarginCostFigureWords words) {
    double perTree = drop.perTree();
    String label = words.label(drop);
    return Line.Row.exact(
        new Line.Caption(label, "", money(perTree), label + ": " + money(perTree)), perTree);
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, amount < 100 ? "%.2f" : "%,.0f", amount);
  }
}
