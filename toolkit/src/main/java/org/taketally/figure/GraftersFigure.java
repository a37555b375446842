package org.taketally.figure;

import java.util.List;
import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.Grafters.GrafterTake;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;

/** Each grafter's take had all grafted the same mix. */
final class GraftersFigure {

  private GraftersFigure() {}

  static String draw(Grafters grafters, FigureSize size) {
    String subtitle =
        "Take had all grafted the same mix; %s; %s"
            .formatted(
                Words.count(grafters.grafters().size(), "grafter"),
                Words.count(grafters.tally().grafts(), "graft"));
    String title = "Two grafters typically differ by " + Words.points(grafters.typical().value());
    Sheet sheet = new Sheet(size, title, subtitle, description(grafters, subtitle));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, "adjusted take"),
            KeyEntry.interval(Mark.CIRCLE, 6, "likely range"),
            KeyEntry.of(Mark.COUNTED, "as counted, nothing adjusted")));
    List<Line> rows = grafters.grafters().stream().map(g -> (Line) row(g)).toList();
    Axis axis = new Axis(0, 1, "grafts that take, in 100", Words::percent, List.of(), false);
    RowChart.draw(sheet, LongList.cut(rows, "grafters"), axis, "grafts");
    if (!grafters.named()) {
      sheet.note("Letters stand for people; names are shown only when asked for.");
    }
    return sheet.svg();
  }

  private static String description(Grafters grafters, String subtitle) {
    return "%s. Typical difference between two: %s (likely %s). %s."
        .formatted(
            subtitle,
            Words.points(grafters.typical().value()),
            Words.points(grafters.typical().interval()),
            LongList.words(grafters.grafters().stream().map(GraftersFigure::detail).toList()));
  }

  private static String detail(GrafterTake grafter) {
    return "%s %s, %s"
        .formatted(
            grafter.shownAs(),
            Words.take(grafter.take()),
            Words.count(grafter.tally().grafts(), "graft"));
  }

  private static Line.Row row(GrafterTake grafter) {
    Line.Caption caption =
        new Line.Caption(
            grafter.shownAs(),
            Words.count(grafter.tally().grafts()),
            Words.percent(grafter.take().value()),
            detail(grafter));
    return Line.Row.of(caption, Mark.CIRCLE, grafter.take()).withCounted(grafter.tally().rate());
  }
}
