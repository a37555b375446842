package org.taketally.figure;

import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.plan.order.GraftOrder;
import org.taketally.wording.GraftOrderWords;
import org.taketally.wording.Words;
import org.taketally.wording.figures.OrderFigureWords;

/** What share of each line's grafts ends as saleable trees, and how far seasons move it. */
final class OrderFigure {

  private OrderFigure() {}

  static String draw(GraftOrder order, FigureSize size) {
    OrderFigureWords words = new OrderFigureWords(order);
    Sheet sheet = new Sheet(size, words.title(), words.subtitle(), words.description());
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, OrderFigureWords.EXPECTED),
            KeyEntry.interval(Mark.CIRCLE, 6, OrderFigureWords.SEASONS)));
    List<Line> rows = order.lines().stream().map(line -> (Line) row(line, words)).toList();
    Axis axis = new Axis(0, 1, OrderFigureWords.AXIS, Words::percent, List.of(), false);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, OrderFigureWords.GRAFTS);
    return sheet.svg();
  }

  private static Line.Row row(GraftOrder.Line line, OrderFigureWords words) {
    Line.Caption caption =
        new Line.Caption(
            GraftOrderWords.name(line.line()),
            line.grafts().isPresent() ? Words.count(line.grafts().getAsInt()) : "–",
            Words.percent(line.share()),
            words.detail(line));
    return Line.Row.of(caption, Mark.CIRCLE, new Estimate(line.share(), line.shareRange()));
  }
}
