package org.taketally.figure;

import java.util.List;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.Pairings.Pairing;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;
import org.taketally.wording.figures.FigureWords;
import org.taketally.wording.figures.PairingsFigureWords;

/** Which cultivars take worse on one rootstock than expected from both alone. */
final class PairingsFigure {

  private static final int SHOWN = 12;

  private PairingsFigure() {}

  static String draw(Pairings pairings, FigureSize size) {
    List<Pairing> flagged = pairings.pairings().stream().filter(Pairing::flagged).toList();
    List<Pairing> others =
        pairings.pairings().stream()
            .filter(p -> !p.flagged())
            .limit(Math.max(0, SHOWN - flagged.size()))
            .toList();
    PairingsFigureWords words = new PairingsFigureWords(pairings);
    Sheet sheet =
        new Sheet(size, words.title(flagged.size()), words.subtitle(), words.description(flagged));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.TRIANGLE, PairingsFigureWords.FLAGGED),
            KeyEntry.of(Mark.CIRCLE, PairingsFigureWords.OTHERS),
            KeyEntry.interval(Mark.RING, 6, FigureWords.LIKELY),
            KeyEntry.of(Mark.COUNTED, PairingsFigureWords.EXPECTED)));
    List<Line> rows =
        java.util.stream.Stream.concat(flagged.stream(), others.stream())
            .map(p -> (Line) row(p, words))
            .toList();
    Axis axis = new Axis(0, 1, FigureWords.IN_100, Words::percent, List.of(), false);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, FigureWords.GRAFTS);
    int left = pairings.pairings().size() - rows.size();
    if (left > 0) {
      sheet.note(words.left(left));
    }
    return sheet.svg();
  }

  private static Line.Row row(Pairing pairing, PairingsFigureWords words) {
    Line.Caption caption =
        new Line.Caption(
            words.label(pairing),
            Words.count(pairing.tally().grafts()),
            words.shortfall(DifferencesFigure.signedPoints(pairing.difference().value())),
            words.detail(pairing));
    Mark mark = pairing.flagged() ? Mark.TRIANGLE : Mark.CIRCLE;
    return Line.Row.of(caption, mark, pairing.take()).withCounted(pairing.expected());
  }
}
