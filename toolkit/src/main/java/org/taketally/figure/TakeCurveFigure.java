package org.taketally.figure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.answers.effects.TakeCurve.Range;
import org.taketally.figure.Lettering.Anchor;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.figures.TakeCurveFigureWords;
import org.taketally.wording.language.Language;

/** Take against days of storage, with the likely range and where the records thin out. */
final class TakeCurveFigure {

  private static final double STRIP_HEIGHT = 34;
  private static final double LABEL_PAD = 8;

  private final TakeCurve curve;
  private final TakeCurveFigureWords words;
  private final Sheet sheet;

  private TakeCurveFigure(TakeCurve curve, FigureSize size, Language language) {
    this.curve = curve;
    this.words = new TakeCurveFigureWords(curve, language);
    this.sheet = new Sheet(size, words.title(), words.subtitle(), words.description());
  }

  static String draw(TakeCurve curve, FigureSize size, Language language) {
    return new TakeCurveFigure(curve, size, language).draw();
  }

  private String draw() {
    if (curve.points().isEmpty()) {
      sheet.note(words.empty());
      return sheet.svg();
    }
    List<KeyEntry> key = new ArrayList<>();
    key.add(new KeyEntry(TakeCurveFigure::sampleLine, words.adjusted()));
    key.add(new KeyEntry(TakeCurveFigure::sampleRibbon, words.likely()));
    if (!curve.counted().isEmpty()) {
      key.add(KeyEntry.of(Mark.POINT, words.counted()));
    }
    sheet.key(key);
    Shares shares = shares();
    Plot plot =
        new Plot(
            sheet,
            first().value(),
            last().value(),
            new Plot.Upwards(shares.low(), shares.high(), Scale.PERCENT));
    thinZone(plot);
    plot.axes(words.axis(), words::number);
    ribbon(plot);
    lines(plot);
    curve.counted().forEach(range -> countedMark(plot, range));
    strip(plot);
    return sheet.svg();
  }

  private Shares shares() {
    Shares shares = Shares.of(first().take().low(), first().take().high());
    for (Point point : curve.points()) {
      shares = shares.with(point.take().low()).with(point.take().high());
    }
    for (Range range : curve.counted()) {
      shares = shares.with(range.counted().low()).with(range.counted().high());
    }
    return shares.rounded();
  }

  private Point first() {
    return curve.points().get(0);
  }

  private Point last() {
    return curve.points().get(curve.points().size() - 1);
  }

  private static SvgElement sampleLine(double x, double y) {
    return stroke(SvgElement.line(x - 9, y, x + 9, y), Palette.LEAF, 2.6);
  }

  private static SvgElement sampleRibbon(double x, double y) {
    return SvgElement.rectangle(x - 9, y - 6, 18, 12)
        .with("fill", Palette.RIBBON)
        .with("stroke", Palette.LEAF_SOFT);
  }

  private static SvgElement stroke(SvgElement element, String colour, double width) {
    return element.with("stroke", colour).with("stroke-width", width);
  }

  private void thinZone(Plot plot) {
    if (!Double.isFinite(curve.thinFrom()) || curve.thinFrom() >= last().value()) {
      return;
    }
    double from = plot.x(curve.thinFrom());
    sheet.add(
        SvgElement.rectangle(from, plot.top(), plot.right() - from, plot.bottom() - plot.top())
            .with("fill", Palette.SHADE),
        SvgElement.line(from, plot.top(), from, plot.bottom())
            .with("stroke", Palette.SOFT_INK)
            .with("stroke-dasharray", "2 3"));
    String few = words.few();
    double half = Lettering.QUIET.width(few) / 2;
    double middle = Math.min((from + plot.right()) / 2, plot.right() - half);
    sheet.add(Lettering.QUIET.at(middle, plot.top() - 3, Anchor.MIDDLE, few));
  }

  private void ribbon(Plot plot) {
    List<double[]> edge = positions(plot, curve.points(), p -> p.take().high());
    List<double[]> back = positions(plot, curve.points(), p -> p.take().low());
    List<double[]> outline = new ArrayList<>(edge);
    Collections.reverse(back);
    outline.addAll(back);
    sheet.add(Plot.path(outline).with("fill", Palette.RIBBON));
    sheet.add(stroke(Plot.path(edge), Palette.LEAF_SOFT, 1.2));
    sheet.add(stroke(Plot.path(back), Palette.LEAF_SOFT, 1.2));
  }

  private static List<double[]> positions(
      Plot plot, List<Point> points, ToDoubleFunction<Point> take) {
    List<double[]> positions = new ArrayList<>();
    points.forEach(
        p -> positions.add(new double[] {plot.x(p.value()), plot.y(take.applyAsDouble(p))}));
    return positions;
  }

  /** The curve, whole where grafts lie near and dashed where they are few. */
  private void lines(Plot plot) {
    int from = 0;
    List<Point> points = curve.points();
    for (int i = 1; i < points.size(); i++) {
      boolean lastOne = i == points.size() - 1;
      if (lastOne || points.get(i).thin() != points.get(from).thin()) {
        boolean thin = points.get(from).thin();
        List<Point> piece = points.subList(from, i + 1);
        SvgElement path =
            stroke(Plot.path(positions(plot, piece, p -> p.take().value())), Palette.LEAF, 2.6);
        sheet.add(thin ? path.with("stroke-dasharray", "5 4") : path);
        from = i;
      }
    }
  }

  private void countedMark(Plot plot, Range range) {
    double x = plot.x((range.from() + range.to()) / 2);
    SvgElement whisker =
        SvgElement.line(x, plot.y(range.counted().low()), x, plot.y(range.counted().high()));
    sheet.add(
        SvgElement.of("g")
            .add(SvgElement.of("title", words.detail(range)))
            .add(stroke(whisker, Palette.SOFT_INK, 1))
            .add(Mark.POINT.at(x, plot.y(range.tally().rate()))));
  }

  /** Bars of grafts under the axis, so that everyone sees where the evidence lies. */
  private void strip(Plot plot) {
    long most = curve.counted().stream().mapToLong(r -> r.tally().grafts()).max().orElse(0);
    if (most == 0) {
      return;
    }
    double top = sheet.y() + 16;
    sheet.add(Lettering.QUIET.at(plot.left() - 8, top + STRIP_HEIGHT, Anchor.END, words.grafts()));
    double lastEnd = Double.NEGATIVE_INFINITY;
    for (Range range : curve.counted()) {
      double from = plot.x(range.from());
      double to = plot.x(range.to());
      double height = STRIP_HEIGHT * range.tally().grafts() / most;
      sheet.add(
          SvgElement.rectangle(
                  from + 0.5, top + STRIP_HEIGHT - height, Math.max(to - from - 1, 1), height)
              .with("fill", Palette.LEAF_SOFT));
      String count = words.count(range.tally().grafts());
      double half = Lettering.QUIET.width(count) / 2;
      if ((from + to) / 2 - half > lastEnd + LABEL_PAD) {
        sheet.add(
            Lettering.QUIET.at(
                (from + to) / 2, top + STRIP_HEIGHT - height - 3, Anchor.MIDDLE, count));
        lastEnd = (from + to) / 2 + half;
      }
    }
    sheet.moveTo(top + STRIP_HEIGHT + 6);
  }
}
