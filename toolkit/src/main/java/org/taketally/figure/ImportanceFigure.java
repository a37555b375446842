package org.taketally.figure;

import java.util.Comparator;
import java.util.List;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.figures.ImportanceFigureWords;
import org.taketally.wording.language.Language;

/** What moves take: every factor on one scale, the one the question is about standing out. */
final class ImportanceFigure {

  private static final double ROOM = 1.05;

  private ImportanceFigure() {}

  static String draw(FactorImportance answer, FigureSize size, Language language) {
    ImportanceFigureWords words = new ImportanceFigureWords(answer, language);
    List<Importance> factors =
        answer.factors().stream()
            .sorted(Comparator.comparingDouble((Importance m) -> -m.typical().value()))
            .toList();
    Sheet sheet =
        new Sheet(size, words.title(factors), words.subtitle(), words.description(factors));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.SQUARE, words.asked()),
            KeyEntry.of(Mark.CIRCLE, words.others()),
            KeyEntry.interval(Mark.CIRCLE, 6, words.likely())));
    List<Line> rows = factors.stream().map(m -> (Line) row(m, size, words)).toList();
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis(answer, factors, words), "");
    sheet.note(words.note());
    return sheet.svg();
  }

  private static Line.Row row(Importance importance, FigureSize size, ImportanceFigureWords words) {
    Line.Caption caption =
        new Line.Caption(
            words.label(importance),
            words.levels(importance),
            words.typical(importance, !size.narrow()),
            words.detail(importance));
    Mark mark = importance.compared() ? Mark.SQUARE : Mark.CIRCLE;
    return Line.Row.of(caption, mark, importance.typical()).highlightedIf(importance.compared());
  }

  private static Axis axis(
      FactorImportance answer, List<Importance> factors, ImportanceFigureWords words) {
    double margin = answer.options().margin();
    double high = factors.stream().mapToDouble(m -> m.typical().high()).max().orElse(margin);
    Axis.Zone zone = new Axis.Zone(0, margin, words.zone(), true);
    return new Axis(
        0,
        ROOM * Math.max(high, margin),
        words.axis(),
        value -> Long.toString(Math.round(100 * value)),
        List.of(zone),
        false);
  }
}
