package org.taketally.figure;

import java.util.Arrays;
import java.util.List;
import org.taketally.answers.verdict.Verdict;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.plan.size.VerdictChances;
import org.taketally.wording.Names;
import org.taketally.wording.Words;
import org.taketally.wording.figures.VerdictChancesFigureWords;

/** The chance of each verdict, from trials made up. */
final class VerdictChancesFigure {

  private VerdictChancesFigure() {}

  static String draw(VerdictChances chances, FigureSize size) {
    VerdictChancesFigureWords words = new VerdictChancesFigureWords(chances);
    List<Verdict> shown =
        Arrays.stream(Verdict.values()).filter(verdict -> chances.chance(verdict) > 0).toList();
    Sheet sheet = new Sheet(size, words.title(), words.subtitle(), words.description(shown));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.SQUARE, VerdictChancesFigureWords.SETTLES),
            KeyEntry.of(Mark.CIRCLE, VerdictChancesFigureWords.OPEN),
            KeyEntry.interval(Mark.CIRCLE, 6, VerdictChancesFigureWords.RANGE)));
    List<Line> rows = shown.stream().map(verdict -> (Line) row(verdict, chances, words)).toList();
    Axis axis = new Axis(0, 1, VerdictChancesFigureWords.AXIS, Words::percent, List.of(), false);
    RowChart.draw(sheet, rows, axis, "");
    return sheet.svg();
  }

  private static Line.Row row(
      Verdict verdict, VerdictChances chances, VerdictChancesFigureWords words) {
    boolean settles = VerdictChances.settles(verdict);
    Line.Caption caption =
        new Line.Caption(
            Names.of(verdict), "", Words.percent(chances.chance(verdict)), words.detail(verdict));
    return Line.Row.of(caption, settles ? Mark.SQUARE : Mark.CIRCLE, chances.estimate(verdict))
        .highlightedIf(settles);
  }
}
