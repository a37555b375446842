package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.plan.size.TrialQuestion.Claim;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.TrialSize.Need;
import org.taketally.wording.figures.TrialSizeFigureWords;

/** Chance of showing a difference, and of showing that none matters, against grafts. */
final class TrialSizeFigure {

  private static final int POINTS = 60;
  private static final double BEYOND = 1.6;
  private static final int IF_NONE = 1000;
  private static final String DASH = "7 4";

  private final TrialSize trial;
  private final Sheet sheet;
  private final int least;
  private final int most;

  private TrialSizeFigure(TrialSize trial, FigureSize size) {
    this.trial = trial;
    TrialSizeFigureWords words = new TrialSizeFigureWords(trial);
    this.sheet = new Sheet(size, TrialSizeFigureWords.TITLE, words.subtitle(), words.description());
    this.least = trial.units().isSingle() ? 4 : trial.leastUnits() * trial.units().size();
    this.most = most();
  }

  static String draw(TrialSize trial, FigureSize size) {
    return new TrialSizeFigure(trial, size).draw();
  }

  private int most() {
    double needed = Math.max(grafts(trial.difference()), grafts(trial.equivalence()));
    double shown = needed > 0 ? BEYOND * needed : IF_NONE;
    double there =
        trial.units().most().isPresent()
            ? (double) trial.mostUnits() * trial.units().size()
            : Double.MAX_VALUE;
    return (int) Math.max(2.0 * least, Math.min(shown, Math.max(there, needed)));
  }

  private static int grafts(Need need) {
    return need.firstGrafts().orElse(0);
  }

  private String draw() {
    sheet.key(
        List.of(
            new KeyEntry(
                (x, y) -> line(SvgElement.line(x - 9, y, x + 9, y), Claim.DIFFERENCE),
                TrialSizeFigureWords.DIFFERENCE),
            new KeyEntry(
                (x, y) -> line(SvgElement.line(x - 9, y, x + 9, y), Claim.EQUIVALENCE),
                TrialSizeFigureWords.EQUIVALENCE),
            new KeyEntry(
                (x, y) -> wanted(SvgElement.line(x - 9, y, x + 9, y)),
                TrialSizeFigureWords.WANTED)));
    Plot plot = new Plot(sheet, 0, most, 0);
    plot.axes(TrialSizeFigureWords.AXIS, SvgElement::number);
    double power = plot.y(trial.question().power());
    sheet.add(wanted(SvgElement.line(plot.left(), power, plot.right(), power)));
    curve(plot, Claim.EQUIVALENCE, trial.equivalence(), Mark.TRIANGLE);
    if (trial.difference().reason() != TrialSize.Reason.NOT_TRUE) {
      curve(plot, Claim.DIFFERENCE, trial.difference(), Mark.CIRCLE);
    }
    return sheet.svg();
  }

  private void curve(Plot plot, Claim claim, Need need, Mark mark) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= POINTS; i++) {
      int grafts = least + (int) Math.round((double) i * (most - least) / POINTS);
      points.add(new double[] {plot.x(grafts), plot.y(trial.chance(grafts, claim))});
    }
    sheet.add(line(Plot.path(points), claim));
    if (need.firstGrafts().isPresent() && need.firstGrafts().getAsInt() <= most) {
      int grafts = need.firstGrafts().getAsInt();
      sheet.add(mark.at(plot.x(grafts), plot.y(trial.chance(grafts, claim))));
    }
  }

  private static SvgElement line(SvgElement line, Claim claim) {
    return claim == Claim.DIFFERENCE
        ? line.with("stroke", Palette.LEAF).with("stroke-width", 2.6)
        : line.with("stroke", Palette.BARK)
            .with("stroke-width", 2.4)
            .with("stroke-dasharray", DASH);
  }

  private static SvgElement wanted(SvgElement line) {
    return line.with("stroke", Palette.SOFT_INK)
        .with("stroke-width", 1.2)
        .with("stroke-dasharray", "2 3");
  }
}
