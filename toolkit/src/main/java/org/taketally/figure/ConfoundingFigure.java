package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.confounding.Confounding.Tie;
import org.taketally.wording.Words;
import org.taketally.wording.figures.ConfoundingFigureWords;

/** How much of what records say about some levels is left once all else is allowed for. */
final class ConfoundingFigure {

  private ConfoundingFigure() {}

  static String draw(Confounding answer, FigureSize size) {
    ConfoundingFigureWords words = new ConfoundingFigureWords(answer);
    List<Line> rows = new ArrayList<>();
    rows.add(row(words.all(), answer.efficiency(), words.allDetail()));
    for (Tie tie : answer.ties()) {
      rows.add(row(words.label(tie), tie.efficiency(), words.detail(tie)));
    }
    Sheet sheet = new Sheet(size, words.title(), words.subtitle(), words.description());
    List<Axis.Zone> zones =
        List.of(new Axis.Zone(0, Confounding.ENTANGLED_BELOW, ConfoundingFigureWords.ZONE, true));
    Axis axis = new Axis(0, 1, ConfoundingFigureWords.AXIS, Words::percent, zones, false);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, "");
    return sheet.svg();
  }

  private static Line row(String label, double share, String detail) {
    double shown = Math.max(0, Math.min(1, share));
    return Line.Row.exact(new Line.Caption(label, "", Words.percent(shown), detail), shown);
  }
}
