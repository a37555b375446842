package org.taketally.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;
import org.taketally.answers.survival.LateLoss.Round;
import org.taketally.answers.survival.SurvivalCurve.Step;
import org.taketally.figure.Lettering.Anchor;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.Words;
import org.taketally.wording.figures.LateLossFigureWords;

/** Grafts still alive after the first count, in steps, with the grafts at risk below. */
final class LateLossFigure {

  private static final int MOST_LEVELS = 6;
  private static final double LINE = 17;
  private static final double ROOM = 1.06;
  private static final double FLOOR_STEP = 0.1;
  private static final List<String> DASHES = List.of("none", "7 3", "2 3", "9 3 2 3", "4 2", "1 2");
  private static final List<String> COLOURS =
      List.of(
          Palette.LEAF, Palette.BARK, Palette.STONE, Palette.STRAW, Palette.INK, Palette.SOFT_INK);

  private final LateLoss answer;
  private final LateLossFigureWords words;
  private final Sheet sheet;
  private final List<LevelLoss> levels;
  private final boolean byLevel;

  private LateLossFigure(LateLoss answer, FigureSize size) {
    this.answer = answer;
    Optional<FactorLoss> factor =
        answer.factors().stream().filter(f -> f.levels().size() <= MOST_LEVELS).findFirst();
    this.byLevel = factor.isPresent();
    this.levels = factor.map(FactorLoss::levels).orElse(List.of(answer.all()));
    this.words = new LateLossFigureWords(answer);
    this.sheet =
        new Sheet(
            size,
            words.title(),
            words.subtitle(factor),
            words.description(byLevel ? levels : List.of()));
  }

  static String draw(LateLoss answer, FigureSize size) {
    return new LateLossFigure(answer, size).draw();
  }

  private String draw() {
    List<KeyEntry> key = new ArrayList<>();
    for (int i = 0; i < levels.size(); i++) {
      int number = i;
      key.add(
          new KeyEntry(
              (x, y) -> stroke(SvgElement.line(x - 9, y, x + 9, y), number),
              words.line(levels.get(i), byLevel)));
    }
    sheet.key(key);
    double lastDay = ROOM * answer.rounds().stream().mapToLong(Round::middle).max().orElse(1);
    Plot plot = new Plot(sheet, 0, lastDay, floor());
    plot.axes(LateLossFigureWords.DAYS, SvgElement::number);
    for (int i = levels.size() - 1; i >= 0; i--) {
      sheet.add(stroke(Plot.path(steps(plot, levels.get(i), lastDay)), i));
    }
    if (!byLevel) {
      answer.all().curve().steps().forEach(step -> whisker(plot, step));
    }
    atRisk(plot);
    return sheet.svg();
  }

  /** A round share under the lowest point of any curve. */
  private double floor() {
    double lowest =
        levels.stream()
            .flatMap(level -> level.curve().steps().stream())
            .mapToDouble(byLevel ? Step::alive : step -> step.interval().low())
            .min()
            .orElse(0);
    return Math.max(0, Math.min(1 - FLOOR_STEP, Math.floor(lowest / FLOOR_STEP) * FLOOR_STEP));
  }

  private static SvgElement stroke(SvgElement line, int number) {
    String dash = DASHES.get(number % DASHES.size());
    line.with("stroke", COLOURS.get(number % COLOURS.size())).with("stroke-width", 2.2);
    return dash.equals("none") ? line : line.with("stroke-dasharray", dash);
  }

  private double day(Step step) {
    int round = (int) Math.round(step.days());
    return answer.rounds().get(Math.min(round, answer.rounds().size()) - 1).middle();
  }

  private List<double[]> steps(Plot plot, LevelLoss level, double lastDay) {
    List<double[]> corners = new ArrayList<>();
    double alive = 1;
    corners.add(new double[] {plot.x(0), plot.y(1)});
    for (Step step : level.curve().steps()) {
      corners.add(new double[] {plot.x(day(step)), plot.y(alive)});
      alive = step.alive();
      corners.add(new double[] {plot.x(day(step)), plot.y(alive)});
    }
    corners.add(new double[] {plot.x(lastDay), plot.y(alive)});
    return corners;
  }

  private void whisker(Plot plot, Step step) {
    double x = plot.x(day(step));
    sheet.add(
        Mark.POINT
            .interval(x, x, 0, 0)
            .with("y1", plot.y(step.interval().low()))
            .with("y2", plot.y(step.interval().high()))
            .with("stroke-width", 2));
  }

  /** Grafts at risk before each round, one line per level. */
  private void atRisk(Plot plot) {
    sheet.moveTo(sheet.y() + 6);
    sheet.lines(Lettering.QUIET, LateLossFigureWords.AT_RISK);
    for (LevelLoss level : levels) {
      if (byLevel) {
        sheet.lines(Lettering.QUIET, "  " + level.name());
      }
      double baseline = sheet.y() + LINE - 5;
      double end = Double.NEGATIVE_INFINITY;
      List<Step> steps =
          level.curve().steps().stream().sorted(Comparator.comparingDouble(Step::days)).toList();
      for (Step step : steps) {
        String count = Words.count(step.atRisk());
        double half = Lettering.BODY.width(count) / 2;
        double x = Math.min(plot.x(day(step)), sheet.right() - half);
        if (x - half > end) {
          sheet.add(Lettering.BODY.at(x, baseline, Anchor.MIDDLE, count));
          end = x + half + 6;
        }
      }
      sheet.moveTo(sheet.y() + LINE);
    }
  }
}
