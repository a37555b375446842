package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.answers.prediction.SecondOpinions;
import org.taketally.answers.prediction.SecondOpinions.Opinion;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Names;
import org.taketally.wording.figures.CalibrationFigureWords;

/** Predicted against counted take: does the model say 70 % where 70 in 100 took? */
final class CalibrationFigure {

  private static final List<Mark> MARKS =
      List.of(Mark.CIRCLE, Mark.DIAMOND, Mark.TRIANGLE, Mark.RING);

  /** Groups that share a mark. */
  private record Series(String name, Mark mark, List<Tenth> tenths) {}

  private CalibrationFigure() {}

  static String draw(FitChecks checks, FigureSize size) {
    String subtitle = CalibrationFigureWords.subtitle(checks);
    Series only = new Series(CalibrationFigureWords.GROUP, Mark.CIRCLE, checks.tenths());
    return draw(List.of(only), CalibrationFigureWords.TITLE, subtitle, size);
  }

  static String draw(SecondOpinions answer, FigureSize size) {
    String subtitle = CalibrationFigureWords.subtitle(answer);
    List<Series> series = new ArrayList<>();
    for (Opinion opinion : answer.opinions()) {
      series.add(
          new Series(
              Names.of(opinion.way()), MARKS.get(series.size() % MARKS.size()), opinion.tenths()));
    }
    return draw(series, CalibrationFigureWords.TITLE_BESIDE, subtitle, size);
  }

  private static String draw(List<Series> series, String title, String subtitle, FigureSize size) {
    Sheet sheet = new Sheet(size, title, subtitle, description(series, subtitle));
    List<KeyEntry> key = new ArrayList<>();
    series.forEach(one -> key.add(KeyEntry.of(one.mark(), one.name())));
    key.add(new KeyEntry(CalibrationFigure::sampleLine, CalibrationFigureWords.EQUAL));
    sheet.key(key);
    Plot plot = new Plot(sheet, 0, 1, 0);
    plot.axes(CalibrationFigureWords.AXIS, value -> Math.round(100 * value) + " %");
    sheet.add(diagonal(plot.x(0), plot.y(0), plot.x(1), plot.y(1)));
    for (int i = series.size() - 1; i >= 0; i--) {
      Series one = series.get(i);
      one.tenths().forEach(tenth -> sheet.add(point(plot, one, tenth)));
    }
    sheet.note(CalibrationFigureWords.NOTE);
    return sheet.svg();
  }

  private static SvgElement point(Plot plot, Series series, Tenth tenth) {
    return SvgElement.of("g")
        .add(SvgElement.of("title", CalibrationFigureWords.detail(tenth)))
        .add(series.mark().at(plot.x(tenth.predicted()), plot.y(tenth.tally().rate())));
  }

  private static SvgElement diagonal(double x1, double y1, double x2, double y2) {
    return SvgElement.line(x1, y1, x2, y2)
        .with("stroke", Palette.SOFT_INK)
        .with("stroke-width", 1.4)
        .with("stroke-dasharray", "5 4");
  }

  private static SvgElement sampleLine(double x, double y) {
    return diagonal(x - 9, y, x + 9, y);
  }

  private static String description(List<Series> series, String subtitle) {
    List<String> all =
        series.stream()
            .map(
                one ->
                    one.name()
                        + ": "
                        + String.join(
                            "; ",
                            one.tenths().stream().map(CalibrationFigureWords::detail).toList()))
            .toList();
    return subtitle + ". " + String.join(". ", all) + ".";
  }
}
