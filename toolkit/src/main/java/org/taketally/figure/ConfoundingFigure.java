package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.confounding.Confounding.Tie;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.TieWords;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** How much of what records say about some levels is left once all else is allowed for. */
final class ConfoundingFigure {

  private ConfoundingFigure() {}

  static String draw(Confounding answer, FigureSize size) {
    AnswerWords words = Wording.of(answer);
    String what = Words.column(answer.compared());
    String title =
        answer.comparable()
            ? "All levels of %s can be compared".formatted(what)
            : "Not all levels of %s can be compared".formatted(what);
    String subtitle =
        "Information left once everything else recorded is allowed for; "
            + Words.count(answer.grafts(), "graft");
    List<Line> rows = new ArrayList<>();
    rows.add(row("all levels of " + what, answer.efficiency(), words.headline()));
    for (Tie tie : answer.ties()) {
      String label =
          "%s within %s".formatted(Words.column(tie.factor()), Words.column(tie.other()));
      rows.add(row(label, tie.efficiency(), TieWords.sentence(tie)));
    }
    Sheet sheet = new Sheet(size, title, subtitle, subtitle + ". " + words.text());
    List<Axis.Zone> zones =
        List.of(new Axis.Zone(0, Confounding.ENTANGLED_BELOW, "no comparison", true));
    Axis axis = new Axis(0, 1, "share of the information", Words::percent, zones, false);
    RowChart.draw(sheet, LongList.cut(rows, "ties"), axis, "");
    return sheet.svg();
  }

  private static Line row(String label, double share, String detail) {
    double shown = Math.max(0, Math.min(1, share));
    return Line.Row.exact(new Line.Caption(label, "", Words.percent(shown), detail), shown);
  }
}
