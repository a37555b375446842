package org.taketally.figure;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.taketally.answers.AnswerOptions.Bands;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.figures.DifficultyFigureWords;
import org.taketally.wording.language.Language;

/** Which cultivars are hard to get to take. */
final class DifficultyFigure {

  private static final Map<Band, Mark> MARKS =
      new EnumMap<>(
          Map.of(
              Band.HARD, Mark.TRIANGLE,
              Band.MIDDLING, Mark.DIAMOND,
              Band.EASY, Mark.CIRCLE,
              Band.CANT_TELL, Mark.RING));

  private DifficultyFigure() {}

  static String draw(Difficulty difficulty, FigureSize size, Language language) {
    DifficultyFigureWords words = new DifficultyFigureWords(difficulty, language);
    Sheet sheet = new Sheet(size, words.title(), words.subtitle(), words.description());
    sheet.key(
        List.of(
            KeyEntry.of(Mark.TRIANGLE, words.band(Band.HARD)),
            KeyEntry.of(Mark.DIAMOND, words.band(Band.MIDDLING)),
            KeyEntry.of(Mark.CIRCLE, words.band(Band.EASY)),
            KeyEntry.of(Mark.RING, words.band(Band.CANT_TELL)),
            KeyEntry.interval(Mark.RING, 6, words.likely()),
            KeyEntry.of(Mark.COUNTED, words.counted())));
    List<Line> rows = difficulty.cultivars().stream().map(c -> (Line) row(c, words)).toList();
    Axis axis = axis(difficulty.options().bands(), words);
    RowChart.draw(sheet, LongList.cut(rows, words::gap), axis, words.grafts());
    sheet.note(words.note());
    return sheet.svg();
  }

  private static Line.Row row(CultivarTake cultivar, DifficultyFigureWords words) {
    Line.Caption caption =
        new Line.Caption(
            cultivar.cultivar(),
            words.count(cultivar.tally().grafts()),
            words.end(cultivar),
            words.detail(cultivar));
    return Line.Row.of(caption, MARKS.get(cultivar.band()), cultivar.take())
        .withCounted(cultivar.tally().rate());
  }

  private static Axis axis(Bands bands, DifficultyFigureWords words) {
    List<Axis.Zone> zones =
        List.of(
            new Axis.Zone(0, bands.hardBelow(), words.band(Band.HARD), false),
            new Axis.Zone(bands.hardBelow(), bands.easyFrom(), words.band(Band.MIDDLING), true),
            new Axis.Zone(bands.easyFrom(), 1, words.band(Band.EASY), false));
    return new Axis(
        0,
        1,
        words.axis(),
        words::percent,
        zones.stream().filter(z -> z.to() > z.from()).collect(Collectors.toList()),
        false);
  }
}
