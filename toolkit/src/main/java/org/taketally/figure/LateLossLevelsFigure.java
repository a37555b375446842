package org.taketally.figure;

import java.util.List;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;
import org.taketally.wording.figures.FigureWords;
import org.taketally.wording.figures.LateLossFigureWords;

/** Late loss of each level of one factor. */
final class LateLossLevelsFigure {

  private static final double ROOM = 1.05;

  private LateLossLevelsFigure() {}

  static String draw(LateLoss answer, FactorLoss factor, FigureSize size) {
    LateLossFigureWords words = new LateLossFigureWords(answer);
    Sheet sheet =
        new Sheet(
            size,
            words.levelsTitle(factor),
            words.levelsSubtitle(),
            words.levelsDescription(factor));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, LateLossFigureWords.COUNTED),
            KeyEntry.interval(Mark.CIRCLE, 6, FigureWords.LIKELY)));
    List<Line> rows = factor.levels().stream().map(l -> (Line) row(l, words)).toList();
    double high = factor.levels().stream().mapToDouble(l -> l.lateLoss().high()).max().orElse(1);
    Axis axis =
        new Axis(
            0,
            Math.min(1, high * ROOM),
            LateLossFigureWords.IN_100,
            Words::percent,
            List.of(),
            false);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, FigureWords.GRAFTS);
    return sheet.svg();
  }

  private static Line.Row row(LevelLoss level, LateLossFigureWords words) {
    Line.Caption caption =
        new Line.Caption(
            level.name(),
            Words.count(level.onceAlive()),
            Words.percent(level.lateLoss().value()),
            words.detail(level));
    return Line.Row.of(caption, Mark.CIRCLE, level.lateLoss());
  }
}
