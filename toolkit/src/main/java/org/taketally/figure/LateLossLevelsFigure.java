package org.taketally.figure;

import java.util.List;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;

/** Late loss of each level of one factor. */
final class LateLossLevelsFigure {

  private static final double ROOM = 1.05;

  private LateLossLevelsFigure() {}

  static String draw(LateLoss answer, FactorLoss factor, FigureSize size) {
    String subtitle =
        "Share of the grafts once alive that were lost later, highest first; %s"
            .formatted(Words.count(answer.all().onceAlive(), "graft"));
    String title = "Late loss by " + Words.column(factor.factor());
    List<String> all = factor.levels().stream().map(LateLossLevelsFigure::detail).toList();
    Sheet sheet = new Sheet(size, title, subtitle, subtitle + ". " + LongList.words(all) + ".");
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, "lost later, as counted"),
            KeyEntry.interval(Mark.CIRCLE, 6, "likely range")));
    List<Line> rows = factor.levels().stream().map(l -> (Line) row(l)).toList();
    double high = factor.levels().stream().mapToDouble(l -> l.lateLoss().high()).max().orElse(1);
    Axis axis =
        new Axis(
            0,
            Math.min(1, high * ROOM),
            "lost of 100 once alive",
            Words::percent,
            List.of(),
            false);
    RowChart.draw(sheet, LongList.cut(rows, "levels"), axis, "grafts");
    return sheet.svg();
  }

  private static String detail(LevelLoss level) {
    return "%s %s lost (likely %s)"
        .formatted(
            level.name(),
            Words.percent(level.lateLoss().value()),
            Words.percents(level.lateLoss().interval()));
  }

  private static Line.Row row(LevelLoss level) {
    Line.Caption caption =
        new Line.Caption(
            level.name(),
            Words.count(level.onceAlive()),
            Words.percent(level.lateLoss().value()),
            detail(level));
    return Line.Row.of(caption, Mark.CIRCLE, level.lateLoss());
  }
}
