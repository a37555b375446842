package org.taketally.figure;

import java.util.Comparator;
import java.util.List;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Kind;
import org.taketally.answers.effects.FactorImportance.Mover;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;

/** What moves take: every factor on one scale, the one the question is about standing out. */
final class ImportanceFigure {

  private static final double ROOM = 1.05;

  private ImportanceFigure() {}

  static String draw(FactorImportance answer, FigureSize size) {
    List<Mover> movers =
        answer.movers().stream()
            .sorted(Comparator.comparingDouble((Mover m) -> -m.typical().value()))
            .toList();
    Sheet sheet = new Sheet(size, title(movers), subtitle(answer), description(answer, movers));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.SQUARE, "the factor the question is about"),
            KeyEntry.of(Mark.CIRCLE, "all others"),
            KeyEntry.interval(Mark.CIRCLE, 6, "likely range")));
    List<Line> rows = movers.stream().map(m -> (Line) row(m, size)).toList();
    RowChart.draw(sheet, LongList.cut(rows, "factors"), axis(answer, movers), "");
    sheet.note(
        "Take two grafts that differ in this one thing and in nothing else: how far apart are their"
            + " chances to take, on average?");
    return sheet.svg();
  }

  private static String title(List<Mover> movers) {
    return movers.isEmpty()
        ? "What moves take"
        : "What moves take: " + Words.column(movers.get(0).factor()) + " most";
  }

  private static String subtitle(FactorImportance answer) {
    return "Typical difference in take, in points; %s"
        .formatted(Words.count(answer.tally().grafts(), "graft"));
  }

  private static String description(FactorImportance answer, List<Mover> movers) {
    StringBuilder text = new StringBuilder(subtitle(answer)).append(". Largest first: ");
    text.append(Words.list(movers.stream().map(ImportanceFigure::detail).toList()));
    movers.stream()
        .filter(Mover::compared)
        .forEach(
            m ->
                text.append(". ")
                    .append(DifferencesFigure.capitalised(Words.column(m.factor())))
                    .append(
                        " stands at place %d of %d"
                            .formatted(movers.indexOf(m) + 1, movers.size())));
    return text.append('.').toString();
  }

  private static String detail(Mover mover) {
    return "%s %s (likely %s)"
        .formatted(
            Words.column(mover.factor()),
            Words.points(mover.typical().value()),
            Words.points(mover.typical().interval()));
  }

  private static Line.Row row(Mover mover, FigureSize size) {
    String typical = Words.points(mover.typical().value());
    String range = " (" + Words.points(mover.typical().interval()).replace(" points", "") + ")";
    String label = Words.column(mover.factor()) + (mover.compared() ? ": the question" : "");
    String count = mover.kind() == Kind.NUMBER ? "number" : Words.count(mover.levels(), "level");
    Line.Caption caption =
        new Line.Caption(label, count, size.narrow() ? typical : typical + range, detail(mover));
    Mark mark = mover.compared() ? Mark.SQUARE : Mark.CIRCLE;
    return Line.Row.of(caption, mark, mover.typical()).highlightedIf(mover.compared());
  }

  private static Axis axis(FactorImportance answer, List<Mover> movers) {
    double margin = answer.options().margin();
    double high = movers.stream().mapToDouble(m -> m.typical().high()).max().orElse(margin);
    Axis.Zone zone = new Axis.Zone(0, margin, "below the margin", true);
    return new Axis(
        0,
        ROOM * Math.max(high, margin),
        "points of take between two typical grafts",
        value -> Long.toString(Math.round(100 * value)),
        List.of(zone),
        false);
  }
}
