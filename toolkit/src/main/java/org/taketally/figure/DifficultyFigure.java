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
import org.taketally.wording.Names;
import org.taketally.wording.Words;

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

  static String draw(Difficulty difficulty, FigureSize size) {
    Sheet sheet = new Sheet(size, title(difficulty), subtitle(difficulty), description(difficulty));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.TRIANGLE, "hard"),
            KeyEntry.of(Mark.DIAMOND, "middling"),
            KeyEntry.of(Mark.CIRCLE, "easy"),
            KeyEntry.of(Mark.RING, "can't tell"),
            KeyEntry.interval(Mark.RING, 6, "likely range"),
            KeyEntry.of(Mark.COUNTED, "as counted, nothing adjusted")));
    List<Line> rows = difficulty.cultivars().stream().map(c -> (Line) row(c)).toList();
    RowChart.draw(
        sheet, LongList.cut(rows, "cultivars"), axis(difficulty.options().bands()), "grafts");
    sheet.note(note(difficulty));
    return sheet.svg();
  }

  private static String title(Difficulty difficulty) {
    long hard = count(difficulty, Band.HARD);
    if (hard == 0) {
      return "No cultivar is clearly hard to get to take";
    }
    return hard == 1
        ? "One cultivar is clearly hard to get to take"
        : "%d cultivars are clearly hard to get to take".formatted(hard);
  }

  private static String subtitle(Difficulty difficulty) {
    return "Adjusted take of %s, hardest first; %s"
        .formatted(
            Words.count(difficulty.cultivars().size(), "cultivar"),
            Words.count(difficulty.tally().grafts(), "graft"));
  }

  private static String note(Difficulty difficulty) {
    Bands bands = difficulty.options().bands();
    return ("Adjusted: had all cultivars been grafted under the same mix of conditions. A band is"
            + " named when it is at least %s sure; hard is below %s, easy is %s or more.")
        .formatted(
            Words.percent(bands.sure()),
            Words.percent(bands.hardBelow()),
            Words.percent(bands.easyFrom()));
  }

  private static long count(Difficulty difficulty, Band band) {
    return difficulty.cultivars().stream().filter(c -> c.band() == band).count();
  }

  private static String description(Difficulty difficulty) {
    List<CultivarTake> all = difficulty.cultivars();
    StringBuilder text = new StringBuilder(subtitle(difficulty)).append(". ");
    for (Band band : Band.values()) {
      List<String> names =
          all.stream().filter(c -> c.band() == band).map(CultivarTake::cultivar).toList();
      text.append(Names.of(band)).append(": ").append(LongList.words(names)).append(". ");
    }
    if (!all.isEmpty()) {
      text.append("Hardest: ").append(detail(all.get(0))).append(". Easiest: ");
      text.append(detail(all.get(all.size() - 1))).append('.');
    }
    return text.toString();
  }

  private static String detail(CultivarTake cultivar) {
    return "%s, %s, %s, %s"
        .formatted(
            cultivar.cultivar(),
            Words.take(cultivar.take()),
            Names.of(cultivar.band()),
            Words.count(cultivar.tally().grafts(), "graft"));
  }

  private static Line.Row row(CultivarTake cultivar) {
    Line.Caption caption =
        new Line.Caption(
            cultivar.cultivar(),
            Words.count(cultivar.tally().grafts()),
            Words.percent(cultivar.take().value()) + ", " + Names.of(cultivar.band()),
            detail(cultivar));
    return Line.Row.of(caption, MARKS.get(cultivar.band()), cultivar.take())
        .withCounted(cultivar.tally().rate());
  }

  private static Axis axis(Bands bands) {
    List<Axis.Zone> zones =
        List.of(
            new Axis.Zone(0, bands.hardBelow(), "hard", false),
            new Axis.Zone(bands.hardBelow(), bands.easyFrom(), "middling", true),
            new Axis.Zone(bands.easyFrom(), 1, "easy", false));
    return new Axis(
        0,
        1,
        "grafts that take, in 100",
        Words::percent,
        zones.stream().filter(z -> z.to() > z.from()).collect(Collectors.toList()),
        false);
  }
}
