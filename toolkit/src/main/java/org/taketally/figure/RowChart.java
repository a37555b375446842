package org.taketally.figure;

import java.util.List;
import org.taketally.figure.Lettering.Anchor;

/**
 * Ordered lines, each a label, a number of grafts, an estimate with its range along a common axis,
 * and the result in words.
 */
final class RowChart {

  private static final double GAP_ROW = 26;
  private static final double OUTER_BAR = 3;
  private static final double INNER_BAR = 7;
  private static final double SINGLE_BAR = 6;
  private static final double PLOT_INSET = 12;
  private static final double TICK_WORDS = 18;
  private static final int WIDE_TICKS = 7;
  private static final int NARROW_TICKS = 5;

  /** With more lines than this the axis is written above them too, near every line. */
  private static final int LONG = 12;

  private final Sheet sheet;
  private final List<Line> lines;
  private final Axis axis;
  private final RowLayout layout;
  private final LinearScale scale;

  private RowChart(Sheet sheet, List<Line> lines, Axis axis, RowLayout layout) {
    this.sheet = sheet;
    this.lines = lines;
    this.axis = axis;
    this.layout = layout;
    this.scale = axis.between(layout.plotLeft() + PLOT_INSET, layout.plotRight() - PLOT_INSET);
  }

  /**
   * Draws at the sheet's free height.
   *
   * @param countHeading what the counts of the lines are, e.g. grafts; empty if they say so
   *     themselves
   */
  static void draw(Sheet sheet, List<Line> lines, Axis axis, String countHeading) {
    new RowChart(sheet, lines, axis, new RowLayout(sheet, lines, countHeading)).draw();
  }

  private void draw() {
    double y = headings(sheet.y());
    if (lines.size() > LONG) {
      y += tickWords(y);
    }
    for (Line line : lines) {
      if (line instanceof Line.Row row) {
        drawRow(row, y);
      } else if (line instanceof Line.Gap gap) {
        drawGap(gap, y);
      }
      y += line instanceof Line.Gap ? GAP_ROW : layout.rowHeight();
    }
    sheet.moveTo(y);
    ticks(y);
  }

  private double headings(double y) {
    layout.writeHeading(sheet, y + 13);
    for (Axis.Zone zone : axis.zones()) {
      double half = Lettering.QUIET.width(zone.words()) / 2;
      double middle = (scale.at(zone.from()) + scale.at(zone.to())) / 2;
      double inside = Math.max(middle, layout.plotLeft() + half);
      inside = Math.min(inside, Math.max(layout.plotRight(), sheet.right()) - half);
      sheet.add(Lettering.QUIET.at(inside, y + 13, Anchor.MIDDLE, zone.words()));
    }
    return y + (axis.zones().isEmpty() && !layout.hasCountColumn() ? 4 : 20);
  }

  private void drawRow(Line.Row row, double y) {
    double middle = y + layout.laneMiddle();
    ground(middle);
    SvgElement group = SvgElement.of("g").add(SvgElement.of("title", row.caption().detail()));
    layout.write(group, row, y);
    bars(group, row, middle);
    row.counted().ifPresent(share -> group.add(Mark.COUNTED.at(scale.at(share), middle)));
    sheet.add(group.add(row.mark().at(scale.at(row.estimate().value()), middle)));
  }

  /** The lane of one row: zones, their edges, the zero line. */
  private void ground(double middle) {
    double top = middle - layout.laneHalf();
    double bottom = middle + layout.laneHalf();
    for (Axis.Zone zone : axis.zones()) {
      double from = zone.from() <= axis.low() ? layout.plotLeft() : scale.at(zone.from());
      double to = zone.to() >= axis.high() ? layout.plotRight() : scale.at(zone.to());
      if (zone.shaded()) {
        sheet.add(
            SvgElement.rectangle(from, top, to - from, bottom - top).with("fill", Palette.SHADE),
            edge(to, top, bottom));
      }
      if (zone.shaded() && zone.from() > axis.low()) {
        sheet.add(edge(from, top, bottom));
      }
    }
    sheet.add(
        SvgElement.line(layout.plotLeft(), middle, layout.plotRight(), middle)
            .with("stroke", Palette.RULE));
    if (axis.zeroLine()) {
      sheet.add(
          SvgElement.line(scale.at(0), top, scale.at(0), bottom)
              .with("stroke", Palette.INK)
              .with("stroke-width", 1.4));
    }
  }

  private static SvgElement edge(double x, double top, double bottom) {
    return SvgElement.line(x, top, x, bottom)
        .with("stroke", Palette.SOFT_INK)
        .with("stroke-dasharray", "2 3");
  }

  private void bars(SvgElement group, Line.Row row, double y) {
    double thickness = row.inner().isPresent() ? OUTER_BAR : SINGLE_BAR;
    double low = scale.at(row.estimate().low());
    double high = scale.at(row.estimate().high());
    group.add(row.mark().interval(low, high, y, thickness));
    row.inner()
        .ifPresent(
            in ->
                group.add(
                    row.mark().interval(scale.at(in.low()), scale.at(in.high()), y, INNER_BAR)));
  }

  private void drawGap(Line.Gap gap, double y) {
    double middle = y + GAP_ROW / 2;
    String words = Lettering.QUIET.fit(gap.words(), sheet.right() - sheet.left() - 20);
    double half = Lettering.QUIET.width(words) / 2 + 8;
    double centre = (sheet.left() + sheet.right()) / 2;
    sheet.add(
        dots(sheet.left(), centre - half, middle),
        dots(centre + half, sheet.right(), middle),
        Lettering.QUIET.at(centre, middle + 4, Anchor.MIDDLE, words));
  }

  private static SvgElement dots(double from, double to, double y) {
    return SvgElement.line(from, y, to, y)
        .with("stroke", Palette.SOFT_INK)
        .with("stroke-dasharray", "1 4");
  }

  private List<Double> everyTick() {
    return scale.ticks(layout.narrow() ? NARROW_TICKS : WIDE_TICKS);
  }

  /** Values along the axis below a height; returns the room they take. */
  private double tickWords(double y) {
    for (double tick : everyTick()) {
      sheet.add(
          Lettering.QUIET.at(scale.at(tick), y + 13, Anchor.MIDDLE, axis.words().apply(tick)));
    }
    return TICK_WORDS;
  }

  private void ticks(double y) {
    sheet.add(
        SvgElement.line(layout.plotLeft(), y, layout.plotRight(), y)
            .with("stroke", Palette.SOFT_INK));
    for (double tick : everyTick()) {
      double x = scale.at(tick);
      sheet.add(SvgElement.line(x, y, x, y + 4).with("stroke", Palette.SOFT_INK));
    }
    sheet.moveTo(y + 4 + tickWords(y + 4));
    for (String line : Lettering.QUIET.wrap(axis.caption(), sheet.right() - layout.plotLeft())) {
      double half = Lettering.QUIET.width(line) / 2;
      double centre = Math.min((layout.plotLeft() + layout.plotRight()) / 2, sheet.right() - half);
      sheet.add(Lettering.QUIET.at(centre, sheet.y() + 13, Anchor.MIDDLE, line));
      sheet.moveTo(sheet.y() + Lettering.QUIET.lineHeight());
    }
    sheet.moveTo(sheet.y() + 6);
  }
}
