package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.PlannedContrasts.Result;
import org.taketally.answers.verdict.Verdict;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Names;
import org.taketally.wording.Words;
import org.taketally.wording.figures.ContrastsFigureWords;
import org.taketally.wording.figures.FigureWords;

/** Planned contrasts against the margin. */
final class ContrastsFigure {

  private static final double ROOM = 1.08;

  private ContrastsFigure() {}

  static String draw(PlannedContrasts answer, FigureSize size) {
    ContrastsFigureWords words = new ContrastsFigureWords(answer);
    Sheet sheet = new Sheet(size, words.title(), words.subtitle(), words.description());
    List<Result> drawn =
        answer.results().stream().filter(each -> each.difference().isPresent()).toList();
    if (drawn.isEmpty()) {
      sheet.note(ContrastsFigureWords.NOTHING);
      return sheet.svg();
    }
    sheet.key(List.of(KeyEntry.interval(Mark.RING, 6, ContrastsFigureWords.LIKELY)));
    List<Line> rows = new ArrayList<>();
    drawn.forEach(each -> rows.add(row(each, words)));
    RowChart.draw(
        sheet,
        LongList.cut(rows, words::gap),
        axis(answer.options().margin(), drawn, words),
        FigureWords.GRAFTS);
    sheet.note(words.note());
    sheet.note(words.notDrawn());
    return sheet.svg();
  }

  private static Line.Row row(Result result, ContrastsFigureWords words) {
    String count =
        Words.count(result.some().grafts()) + " + " + Words.count(result.others().grafts());
    Line.Caption caption =
        new Line.Caption(
            result.contrast().name(), count, Names.of(result.verdict()), words.detail(result));
    return Line.Row.of(caption, mark(result.verdict()), result.difference().orElseThrow());
  }

  private static Mark mark(Verdict verdict) {
    return switch (verdict) {
      case NO_PRACTICAL_DIFFERENCE -> Mark.CIRCLE;
      case LESS_THAN_YOU_CARE_ABOUT -> Mark.DIAMOND;
      case MATTERS -> Mark.TRIANGLE;
      case DIFFERS_UNSETTLED, DEPENDS_ON_CULTIVAR -> Mark.SQUARE;
      case CANT_TELL_YET, ENTANGLED -> Mark.RING;
    };
  }

  private static Axis axis(double margin, List<Result> drawn, ContrastsFigureWords words) {
    double low = -margin;
    double high = margin;
    for (Result each : drawn) {
      low = Math.min(low, each.difference().orElseThrow().low());
      high = Math.max(high, each.difference().orElseThrow().high());
    }
    return new Axis(
        low * ROOM,
        high * ROOM,
        ContrastsFigureWords.AXIS,
        Scale.POINTS::words,
        List.of(new Axis.Zone(-margin, margin, words.zone(), true)),
        true);
  }
}
