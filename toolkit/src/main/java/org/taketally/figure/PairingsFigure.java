package org.taketally.figure;

import java.util.List;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.Pairings.Pairing;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;

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
    Sheet sheet =
        new Sheet(size, title(flagged.size()), subtitle(pairings), description(pairings, flagged));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.TRIANGLE, "on the short list"),
            KeyEntry.of(Mark.CIRCLE, "as expected, or nearly"),
            KeyEntry.interval(Mark.RING, 6, "likely range"),
            KeyEntry.of(Mark.COUNTED, "expected from cultivar and rootstock alone")));
    List<Line> rows =
        java.util.stream.Stream.concat(flagged.stream(), others.stream())
            .map(p -> (Line) row(p))
            .toList();
    Axis axis = new Axis(0, 1, "grafts that take, in 100", Words::percent, List.of(), false);
    RowChart.draw(sheet, LongList.cut(rows, "pairings"), axis, "grafts");
    int left = pairings.pairings().size() - rows.size();
    if (left > 0) {
      sheet.note(Words.count(left, "more pairing") + ", none on the short list: see the table.");
    }
    return sheet.svg();
  }

  private static String title(int flagged) {
    return switch (flagged) {
      case 0 -> "No pairing stands out as failing on its own";
      case 1 -> "One pairing takes worse than it should";
      default -> flagged + " pairings take worse than they should";
    };
  }

  private static String subtitle(Pairings pairings) {
    return "Cultivar on rootstock, largest shortfall first; %s; %s"
        .formatted(
            Words.count(pairings.pairings().size(), "pairing"),
            Words.count(pairings.tally().grafts(), "graft"));
  }

  private static String description(Pairings pairings, List<Pairing> flagged) {
    StringBuilder text = new StringBuilder(subtitle(pairings)).append(". On the short list: ");
    text.append(
        flagged.isEmpty()
            ? "none"
            : Words.list(flagged.stream().map(PairingsFigure::detail).toList()));
    if (!flagged.isEmpty()) {
      text.append(". Of these, about ").append(Words.percent(pairings.falseShare()));
      text.append(" are expected to be there by chance");
    }
    return text.append('.').toString();
  }

  private static String name(Pairing pairing) {
    return pairing.cultivar() + " on " + pairing.rootstock();
  }

  private static String detail(Pairing pairing) {
    return "%s, %s where %s was expected, %s"
        .formatted(
            name(pairing),
            Words.take(pairing.take()),
            Words.percent(pairing.expected()),
            Words.count(pairing.tally().grafts(), "graft"));
  }

  private static Line.Row row(Pairing pairing) {
    Line.Caption caption =
        new Line.Caption(
            name(pairing),
            Words.count(pairing.tally().grafts()),
            DifferencesFigure.signedPoints(pairing.difference().value()) + " points",
            detail(pairing));
    Mark mark = pairing.flagged() ? Mark.TRIANGLE : Mark.CIRCLE;
    return Line.Row.of(caption, mark, pairing.take()).withCounted(pairing.expected());
  }
}
