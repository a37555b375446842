package org.taketally.figure;

import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.figures.DifferencesFigureWords;
import org.taketally.wording.figures.DifferencesFigureWords.Finding;
import org.taketally.wording.language.Language;

/** Differences between each two levels against the margin: does the factor matter? */
final class DifferencesFigure {

  private static final double ROOM = 1.08;

  private static final Map<Finding, Mark> MARKS =
      new EnumMap<>(
          Map.of(
              Finding.ABOUT_THE_SAME, Mark.CIRCLE,
              Finding.SMALL, Mark.DIAMOND,
              Finding.DIFFER, Mark.TRIANGLE,
              Finding.CANT_TELL, Mark.RING));

  private DifferencesFigure() {}

  static String draw(FactorVerdict verdict, FigureSize size, Language language) {
    DifferencesFigureWords words = new DifferencesFigureWords(verdict, language);
    Map<String, Long> grafts =
        verdict.levels().stream()
            .collect(Collectors.toMap(LevelTake::level, l -> l.tally().grafts(), Long::sum));
    List<Pair> pairs =
        verdict.size().map(FactorVerdict.Size::pairs).orElse(List.of()).stream()
            .map(DifferencesFigure::higherFirst)
            .sorted(Comparator.comparingDouble((Pair p) -> -p.difference().value()))
            .toList();
    Sheet sheet = new Sheet(size, words.title(), words.subtitle(pairs), words.description(pairs));
    if (pairs.isEmpty()) {
      sheet.note(words.empty());
      return sheet.svg();
    }
    sheet.key(key(pairs, words));
    List<Line> rows = pairs.stream().map(p -> (Line) row(p, grafts, words)).toList();
    Axis axis = axis(verdict, pairs, words);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, words.graftsHeading());
    sheet.note(words.note());
    return sheet.svg();
  }

  private static List<KeyEntry> key(List<Pair> pairs, DifferencesFigureWords words) {
    List<KeyEntry> key =
        Arrays.stream(Finding.values())
            .filter(f -> pairs.stream().anyMatch(p -> Finding.of(p) == f))
            .map(f -> KeyEntry.of(MARKS.get(f), words.of(f)))
            .collect(Collectors.toList());
    key.add(KeyEntry.interval(Mark.RING, 7, words.alone(pairs.get(0))));
    key.add(KeyEntry.interval(Mark.RING, 3, words.allAtOnce()));
    return key;
  }

  private static Pair higherFirst(Pair pair) {
    return pair.difference().value() >= 0 ? pair : pair.turned();
  }

  private static Line.Row row(Pair pair, Map<String, Long> grafts, DifferencesFigureWords words) {
    String count =
        words.grafts(grafts.getOrDefault(pair.level(), 0L), grafts.getOrDefault(pair.other(), 0L));
    Finding finding = Finding.of(pair);
    Line.Caption caption =
        new Line.Caption(words.label(pair), count, words.of(finding), words.detail(pair));
    return Line.Row.of(caption, MARKS.get(finding), pair.difference())
        .withInner(pair.equivalence());
  }

  private static Axis axis(FactorVerdict verdict, List<Pair> pairs, DifferencesFigureWords words) {
    double margin = verdict.options().margin();
    double low = -margin;
    double high = margin;
    for (Pair pair : pairs) {
      low = Math.min(low, Math.min(pair.difference().low(), pair.equivalence().low()));
      high = Math.max(high, Math.max(pair.difference().high(), pair.equivalence().high()));
    }
    Axis.Zone zone = new Axis.Zone(-margin, margin, words.zone(), true);
    return new Axis(
        low * ROOM,
        high * ROOM,
        words.axis(),
        DifferencesFigure::signedPoints,
        List.of(zone),
        true);
  }

  static String signedPoints(double difference) {
    long points = Math.round(100 * difference);
    return points > 0 ? "+" + points : points < 0 ? "−" + -points : "0";
  }
}
