package org.taketally.figure;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Names;
import org.taketally.wording.Words;

/** Differences between each two levels against the margin: does the factor matter? */
final class DifferencesFigure {

  private static final double ROOM = 1.08;

  private DifferencesFigure() {}

  /** What can be said about one pair. */
  private enum Finding {
    ABOUT_THE_SAME(Mark.CIRCLE, "about the same"),
    SMALL(Mark.DIAMOND, "differ, within margin"),
    DIFFER(Mark.TRIANGLE, "differ"),
    CANT_TELL(Mark.RING, "can't tell yet");

    private final Mark mark;
    private final String words;

    Finding(Mark mark, String words) {
      this.mark = mark;
      this.words = words;
    }

    static Finding of(Pair pair) {
      boolean apart = !pair.difference().interval().contains(0);
      if (pair.equivalent()) {
        return apart ? SMALL : ABOUT_THE_SAME;
      }
      return apart ? DIFFER : CANT_TELL;
    }
  }

  static String draw(FactorVerdict verdict, FigureSize size) {
    Map<String, Long> grafts =
        verdict.levels().stream()
            .collect(Collectors.toMap(LevelTake::level, l -> l.tally().grafts(), Long::sum));
    List<Pair> pairs =
        verdict.size().map(FactorVerdict.Size::pairs).orElse(List.of()).stream()
            .map(DifferencesFigure::higherFirst)
            .sorted(Comparator.comparingDouble((Pair p) -> -p.difference().value()))
            .toList();
    String subtitle = subtitle(verdict, pairs);
    Sheet sheet = new Sheet(size, title(verdict), subtitle, description(verdict, subtitle, pairs));
    if (pairs.isEmpty()) {
      sheet.note("These records don't support an estimate of the differences.");
      return sheet.svg();
    }
    sheet.key(key(pairs));
    List<Line> rows = pairs.stream().map(p -> (Line) row(p, grafts)).toList();
    RowChart.draw(sheet, LongList.cut(rows, "pairs"), axis(verdict, pairs), "grafts");
    sheet.note(note(verdict));
    return sheet.svg();
  }

  private static List<KeyEntry> key(List<Pair> pairs) {
    List<KeyEntry> key =
        java.util.Arrays.stream(Finding.values())
            .filter(f -> pairs.stream().anyMatch(p -> Finding.of(p) == f))
            .map(f -> KeyEntry.of(f.mark, f.words))
            .collect(Collectors.toList());
    key.add(KeyEntry.interval(Mark.RING, 7, "likely range of this pair alone (90 %)"));
    key.add(KeyEntry.interval(Mark.RING, 3, "likely range, all pairs at once"));
    return key;
  }

  private static String title(FactorVerdict verdict) {
    String factor = capitalised(Words.column(verdict.factor()));
    return factor + ": " + Names.of(verdict.verdict());
  }

  static String capitalised(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
  }

  private static String subtitle(FactorVerdict verdict, List<Pair> pairs) {
    return "Difference in take between each two of %s levels, in points; %s; %s"
        .formatted(
            Words.count(verdict.levels().size()),
            Words.count(pairs.size(), "pair"),
            Words.count(verdict.tally().grafts(), "graft"));
  }

  private static String description(FactorVerdict verdict, String subtitle, List<Pair> pairs) {
    StringBuilder text = new StringBuilder(subtitle).append(". ");
    for (Finding finding : Finding.values()) {
      long count = pairs.stream().filter(p -> Finding.of(p) == finding).count();
      if (count > 0) {
        text.append(Words.count(count, "pair")).append(": ").append(finding.words).append(". ");
      }
    }
    if (!pairs.isEmpty()) {
      text.append("Largest: ").append(detail(pairs.get(0))).append(". ");
    }
    text.append("Margin: ").append(Words.points(verdict.options().margin())).append('.');
    return text.toString();
  }

  private static String note(FactorVerdict verdict) {
    return "The shaded stretch is the margin: differences of less than %s, too small to change what"
            .formatted(Words.points(verdict.options().margin()))
        + " you do. A pair is about the same when its heavy bar stays inside.";
  }

  private static Pair higherFirst(Pair pair) {
    return pair.difference().value() >= 0 ? pair : pair.turned();
  }

  private static String detail(Pair pair) {
    return "%s over %s, %s (likely %s), %s"
        .formatted(
            pair.level(),
            pair.other(),
            Words.points(pair.difference().value()),
            Words.points(pair.difference().interval()),
            Finding.of(pair).words);
  }

  private static Line.Row row(Pair pair, Map<String, Long> grafts) {
    String count =
        Words.count(grafts.getOrDefault(pair.level(), 0L))
            + " + "
            + Words.count(grafts.getOrDefault(pair.other(), 0L));
    Finding finding = Finding.of(pair);
    Line.Caption caption =
        new Line.Caption(
            pair.level() + " over " + pair.other(), count, finding.words, detail(pair));
    return Line.Row.of(caption, finding.mark, pair.difference()).withInner(pair.equivalence());
  }

  private static Axis axis(FactorVerdict verdict, List<Pair> pairs) {
    double margin = verdict.options().margin();
    double low = -margin;
    double high = margin;
    for (Pair pair : pairs) {
      low = Math.min(low, Math.min(pair.difference().low(), pair.equivalence().low()));
      high = Math.max(high, Math.max(pair.difference().high(), pair.equivalence().high()));
    }
    Axis.Zone zone =
        new Axis.Zone(-margin, margin, "within " + Words.points(margin) + ": about the same", true);
    return new Axis(
        low * ROOM,
        high * ROOM,
        "points by which the first takes better",
        DifferencesFigure::signedPoints,
        List.of(zone),
        true);
  }

  static String signedPoints(double difference) {
    long points = Math.round(100 * difference);
    return points > 0 ? "+" + points : points < 0 ? "−" + -points : "0";
  }
}
