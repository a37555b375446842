package org.taketally.figure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.taketally.figure.Lettering.Anchor;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.watch.RecentExcess;
import org.taketally.watch.SeasonChart.Step;
import org.taketally.watch.TakeWatch;
import org.taketally.watch.WatchedSeason;
import org.taketally.wording.figures.SeasonChartFigureWords;

/**
 * A season by day of counting: above what has gathered against the limit, below how things stand
 * lately.
 */
final class SeasonChartFigure {

  private static final double LABEL_ROOM = 46;
  private static final double TOP_HEIGHT = 190;
  private static final double BOTTOM_HEIGHT = 120;
  private static final double GAP = 44;
  private static final double HEAD_ROOM = 1.12;
  private static final int UP_TICKS = 4;

  private final TakeWatch watch;
  private final Sheet sheet;
  private final LocalDate first;
  private final LinearScale across;

  private SeasonChartFigure(WatchedSeason season, FigureSize size) {
    this.watch = season.watch();
    SeasonChartFigureWords words = new SeasonChartFigureWords(season);
    this.sheet =
        new Sheet(size, words.title(), SeasonChartFigureWords.SUBTITLE, words.description());
    this.first = day(0);
    long days = Math.max(1, day(watch.steps().size() - 1).toEpochDay() - first.toEpochDay());
    this.across = new LinearScale(-0.5, days + 0.5, sheet.left() + LABEL_ROOM, sheet.right() - 10);
  }

  static String draw(WatchedSeason season, FigureSize size) {
    return new SeasonChartFigure(season, size).draw();
  }

  private LocalDate day(int step) {
    return watch.steps().get(step).lot().counted();
  }

  private double x(int step) {
    return across.at((double) (day(step).toEpochDay() - first.toEpochDay()));
  }

  private String draw() {
    sheet.key(
        List.of(
            new KeyEntry(SeasonChartFigure::sample, SeasonChartFigureWords.GATHERED),
            KeyEntry.of(Mark.TRIANGLE, SeasonChartFigureWords.ALARM),
            KeyEntry.of(Mark.POINT, SeasonChartFigureWords.LATELY),
            KeyEntry.of(Mark.SQUARE, SeasonChartFigureWords.LATELY_BEYOND),
            new KeyEntry(SeasonChartFigure::dashed, SeasonChartFigureWords.LIMIT)));
    gathered();
    lately();
    sheet.note(SeasonChartFigureWords.NOTE);
    return sheet.svg();
  }

  private static SvgElement sample(double x, double y) {
    return SvgElement.line(x - 9, y, x + 9, y)
        .with("stroke", Palette.LEAF)
        .with("stroke-width", 2.4);
  }

  private static SvgElement dashed(double x, double y) {
    return limitLine(x - 9, x + 9, y);
  }

  private static SvgElement limitLine(double from, double to, double y) {
    return SvgElement.line(from, y, to, y)
        .with("stroke", Palette.BARK)
        .with("stroke-width", 1.6)
        .with("stroke-dasharray", "6 4");
  }

  private void gathered() {
    double top = sheet.y() + 8;
    double most = watch.steps().stream().mapToDouble(Step::height).max().orElse(0);
    LinearScale up =
        new LinearScale(0, HEAD_ROOM * Math.max(most, watch.limit()), top + TOP_HEIGHT, top);
    frame(up, top + TOP_HEIGHT, tick -> SvgElement.number(tick));
    sheet.add(limitLine(across.from(), across.to(), up.at(watch.limit())));
    List<double[]> line = new ArrayList<>();
    line.add(new double[] {across.from(), up.at(0)});
    for (int i = 0; i < watch.steps().size(); i++) {
      line.add(new double[] {x(i), up.at(watch.steps().get(i).height())});
      if (watch.steps().get(i).alarm()) {
        line.add(new double[] {x(i), up.at(0)});
      }
    }
    sheet.add(Plot.path(line).with("stroke", Palette.LEAF).with("stroke-width", 2.4));
    for (int i = 0; i < watch.steps().size(); i++) {
      if (watch.steps().get(i).alarm()) {
        sheet.add(Mark.TRIANGLE.at(x(i), up.at(watch.steps().get(i).height())));
      }
    }
    sheet.moveTo(top + TOP_HEIGHT + GAP);
  }

  private void lately() {
    double top = sheet.y();
    double most = 0.05;
    for (RecentExcess recent : watch.recent()) {
      most = Math.max(most, Math.max(Math.abs(recent.excess()), recent.limit()));
    }
    most = Math.min(1, HEAD_ROOM * most);
    LinearScale up = new LinearScale(-most, most, top + BOTTOM_HEIGHT, top);
    frame(up, top + BOTTOM_HEIGHT, DifferencesFigure::signedPoints);
    List<double[]> band = edge(up, i -> watch.recent().get(i).limit());
    List<double[]> back = edge(up, i -> -watch.recent().get(i).limit());
    for (List<double[]> side : List.of(band, back)) {
      sheet.add(
          Plot.path(side)
              .with("stroke", Palette.BARK)
              .with("stroke-width", 1.4)
              .with("stroke-dasharray", "6 4"));
    }
    sheet.add(
        Plot.path(edge(up, i -> watch.recent().get(i).excess()))
            .with("stroke", Palette.LEAF_SOFT)
            .with("stroke-width", 1.6));
    for (int i = 0; i < watch.recent().size(); i++) {
      Mark mark = watch.recent().get(i).beyond() ? Mark.SQUARE : Mark.POINT;
      sheet.add(mark.at(x(i), up.at(watch.recent().get(i).excess())));
    }
    sheet.moveTo(top + BOTTOM_HEIGHT + GAP);
  }

  private List<double[]> edge(LinearScale up, IntToDoubleFunction value) {
    List<double[]> line = new ArrayList<>();
    for (int i = 0; i < watch.recent().size(); i++) {
      line.add(new double[] {x(i), up.at(value.applyAsDouble(i))});
    }
    return line;
  }

  private void frame(
      LinearScale up, double bottom, java.util.function.DoubleFunction<String> words) {
    for (double tick : up.ticks(UP_TICKS)) {
      sheet.add(
          SvgElement.line(across.from(), up.at(tick), across.to(), up.at(tick))
              .with("stroke", Palette.RULE),
          Lettering.QUIET.at(across.from() - 8, up.at(tick) + 4, Anchor.END, words.apply(tick)));
    }
    sheet.add(
        SvgElement.line(across.from(), bottom, across.to(), bottom)
            .with("stroke", Palette.SOFT_INK));
    for (double tick : across.ticks(sheet.size().narrow() ? 3 : 7)) {
      LocalDate day = first.plusDays(Math.round(tick));
      if (tick >= 0) {
        sheet.add(
            SvgElement.line(across.at(tick), bottom, across.at(tick), bottom + 4)
                .with("stroke", Palette.SOFT_INK),
            Lettering.QUIET.at(
                across.at(tick),
                bottom + 17,
                Anchor.MIDDLE,
                day.toString().substring(sheet.size().narrow() ? 5 : 0)));
      }
    }
  }
}
