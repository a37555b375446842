package org.taketally.figure;

import java.util.List;
import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.Grafters.GrafterTake;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;
import org.taketally.wording.figures.FigureWords;
import org.taketally.wording.figures.GraftersFigureWords;

/** Each grafter's take had all grafted the same mix. */
final class GraftersFigure {

  private GraftersFigure() {}

  static String draw(Grafters grafters, FigureSize size) {
    GraftersFigureWords words = new GraftersFigureWords(grafters);
    Sheet sheet = new Sheet(size, words.title(), words.subtitle(), words.description());
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, FigureWords.ADJUSTED),
            KeyEntry.interval(Mark.CIRCLE, 6, FigureWords.LIKELY),
            KeyEntry.of(Mark.COUNTED, FigureWords.COUNTED)));
    List<Line> rows = grafters.grafters().stream().map(g -> (Line) row(g, words)).toList();
    Axis axis = new Axis(0, 1, FigureWords.IN_100, Words::percent, List.of(), false);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, FigureWords.GRAFTS);
    if (!grafters.named()) {
      sheet.note(words.letters());
    }
    return sheet.svg();
  }

  private static Line.Row row(GrafterTake grafter, GraftersFigureWords words) {
    Line.Caption caption =
        new Line.Caption(
            grafter.shownAs(),
            Words.count(grafter.tally().grafts()),
            Words.percent(grafter.take().value()),
            words.detail(grafter));
    return Line.Row.of(caption, Mark.CIRCLE, grafter.take()).withCounted(grafter.tally().rate());
  }
}
