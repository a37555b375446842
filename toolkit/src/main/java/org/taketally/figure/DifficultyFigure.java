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

  /** Room for the word of a band beside its limit. */
  private static final double BESIDE = 0.15;

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
    Axis axis = axis(difficulty, words);
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

  /** As much of 0 to 100 % as estimates, counts and bands need. */
  private static Shares shares(Difficulty difficulty) {
    Bands bands = difficulty.options().bands();
    Shares shares = Shares.of(bands.hardBelow() - BESIDE, bands.easyFrom() + BESIDE);
    for (CultivarTake cultivar : difficulty.cultivars()) {
      shares = shares.with(cultivar.take().low()).with(cultivar.take().high());
      shares = shares.with(cultivar.tally().rate());
    }
    return shares.rounded();
  }

  private static Axis axis(Difficulty difficulty, DifficultyFigureWords words) {
    Bands bands = difficulty.options().bands();
    Shares shares = shares(difficulty);
    double low = shares.low();
    double high = shares.high();
    List<Axis.Zone> zones =
        List.of(
            new Axis.Zone(low, bands.hardBelow(), words.band(Band.HARD), false),
            new Axis.Zone(bands.hardBelow(), bands.easyFrom(), words.band(Band.MIDDLING), true),
            new Axis.Zone(bands.easyFrom(), high, words.band(Band.EASY), false));
    return new Axis(
        low,
        high,
        words.axis(),
        words::percent,
        zones.stream().filter(z -> z.to() > z.from()).collect(Collectors.toList()),
        false);
  }
}
