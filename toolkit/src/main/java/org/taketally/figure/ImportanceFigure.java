package org.taketally.figure;

import java.util.Comparator;
import java.util.List;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Mover;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.figures.ImportanceFigureWords;
import org.taketally.wording.language.Language;

/** What moves take: every factor on one scale, the one the question is about standing out. */
final class ImportanceFigure {

  private static final double ROOM = 1.05;

  private ImportanceFigure() {}

  static String draw(FactorImportance answer, FigureSize size, Language language) {
    ImportanceFigureWords words = new ImportanceFigureWords(answer, language);
    List<Mover> movers =
        answer.movers().stream()
            .sorted(Comparator.comparingDouble((Mover m) -> -m.typical().value()))
            .toList();
    Sheet sheet = new Sheet(size, words.title(movers), words.subtitle(), words.description(movers));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.SQUARE, words.asked()),
            KeyEntry.of(Mark.CIRCLE, words.others()),
            KeyEntry.interval(Mark.CIRCLE, 6, words.likely())));
    List<Line> rows = movers.stream().map(m -> (Line) row(m, size, words)).toList();
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis(answer, movers, words), "");
    sheet.note(words.note());
    return sheet.svg();
  }

  private static Line.Row row(Mover mover, FigureSize size, ImportanceFigureWords words) {
    Line.Caption caption =
        new Line.Caption(
            words.label(mover),
            words.levels(mover),
            words.typical(mover, !size.narrow()),
            words.detail(mover));
    Mark mark = mover.compared() ? Mark.SQUARE : Mark.CIRCLE;
    return Line.Row.of(caption, mark, mover.typical()).highlightedIf(mover.compared());
  }

  private static Axis axis(
      FactorImportance answer, List<Mover> movers, ImportanceFigureWords words) {
    double margin = answer.options().margin();
    double high = movers.stream().mapToDouble(m -> m.typical().high()).max().orElse(margin);
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
