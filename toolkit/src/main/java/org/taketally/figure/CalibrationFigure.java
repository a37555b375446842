package org.taketally.figure;

import java.util.List;
import org.taketally.answers.FitChecks;
import org.taketally.answers.FitChecks.Tenth;
import org.taketally.answers.Words;
import org.taketally.figure.Sheet.KeyEntry;

/** Predicted against counted take: does the model say 70 % where 70 in 100 took? */
final class CalibrationFigure {

  private CalibrationFigure() {}

  static String draw(FitChecks checks, FigureSize size) {
    String subtitle =
        "Grafts in %s by predicted take; %s"
            .formatted(
                Words.count(checks.tenths().size(), "group"),
                Words.count(checks.tally().grafts(), "graft"));
    String title = "Predicted and counted take";
    Sheet sheet = new Sheet(size, title, subtitle, description(checks, subtitle));
    sheet.key(
        List.of(
            KeyEntry.of(Mark.CIRCLE, "a group of grafts"),
            new KeyEntry(CalibrationFigure::sampleLine, "predicted equals counted")));
    Plot plot = new Plot(sheet, 0, 1, 0);
    plot.axes("predicted take", value -> Math.round(100 * value) + " %");
    sheet.add(diagonal(plot.x(0), plot.y(0), plot.x(1), plot.y(1)));
    for (Tenth tenth : checks.tenths()) {
      sheet.add(
          SvgElement.of("g")
              .add(SvgElement.of("title", detail(tenth)))
              .add(Mark.CIRCLE.at(plot.x(tenth.predicted()), plot.y(tenth.tally().rate()))));
    }
    sheet.note("Upwards: take as counted. Points near the line mean the model can be believed.");
    return sheet.svg();
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

  private static String description(FitChecks checks, String subtitle) {
    List<String> groups = checks.tenths().stream().map(CalibrationFigure::detail).toList();
    return subtitle + ". " + String.join("; ", groups) + ".";
  }

  private static String detail(Tenth tenth) {
    return "predicted %s, counted %s of %s"
        .formatted(
            Words.percent(tenth.predicted()),
            Words.percent(tenth.tally().rate()),
            Words.count(tenth.tally().grafts(), "graft"));
  }
}
