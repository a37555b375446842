package org.taketally.figure;

import java.util.List;
import java.util.Locale;
import org.taketally.answers.verdict.MarginCost;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** What a saleable tree costs if take drops. */
final class MarginCostFigure {

  private static final double LEAST_TAKE = 0.02;

  private MarginCostFigure() {}

  static String draw(MarginCost cost, FigureSize size) {
    List<Line> rows = new java.util.ArrayList<>();
    double most = 0;
    for (double drop : cost.drops()) {
      if (cost.take() - drop >= LEAST_TAKE) {
        rows.add(row(cost, drop));
        most = cost.perTree(cost.take() - drop);
      }
    }
    String title =
        "%s less make a tree %s dearer"
            .formatted(Words.points(cost.margin()), Words.percent(cost.dearerBy()));
    String subtitle = "Cost of a saleable tree, by how far take drops";
    Sheet sheet = new Sheet(size, title, subtitle, subtitle + ". " + Wording.of(cost).headline());
    Axis axis =
        new Axis(
            0, most * 1.05, "cost of a saleable tree", MarginCostFigure::money, List.of(), false);
    RowChart.draw(sheet, rows, axis, "");
    return sheet.svg();
  }

  private static Line row(MarginCost cost, double drop) {
    double perTree = cost.perTree(cost.take() - drop);
    String label =
        drop == 0
            ? "take as it is, " + Words.percent(cost.take())
            : Words.points(drop) + " less, " + Words.percent(cost.take() - drop);
    return Line.Row.exact(
        new Line.Caption(label, "", money(perTree), label + ": " + money(perTree)), perTree);
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, amount < 100 ? "%.2f" : "%,.0f", amount);
  }
}
