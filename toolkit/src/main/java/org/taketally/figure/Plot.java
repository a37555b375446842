package org.taketally.figure;

import java.util.List;
import java.util.function.DoubleFunction;
import org.taketally.figure.Lettering.Anchor;

/** A frame with a share (to 100 %) or another number upwards, and a number sideways. */
final class Plot {

  private static final double LABEL_ROOM = 46;
  private static final double WIDE_HEIGHT = 300;
  private static final double NARROW_HEIGHT = 230;
  private static final int UP_TICKS = 5;
  private static final int WIDE_TICKS = 10;
  private static final int NARROW_TICKS = 5;

  private final Sheet sheet;
  private final LinearScale across;
  private final LinearScale up;
  private final Scale scale;
  private final double top;
  private final double bottom;

  /**
   * A frame at the sheet's free height.
   *
   * @param low lowest value sideways
   * @param high highest value sideways
   * @param floor lowest share upwards, 0 to 1
   */
  Plot(Sheet sheet, double low, double high, double floor) {
    this(sheet, low, high, new Upwards(floor, 1, Scale.PERCENT));
  }

  /** What is measured upwards. */
  record Upwards(double low, double high, Scale scale) {}

  Plot(Sheet sheet, double low, double high, Upwards upwards) {
    this.sheet = sheet;
    this.scale = upwards.scale();
    top = sheet.y() + 8;
    bottom = top + (sheet.size().narrow() ? NARROW_HEIGHT : WIDE_HEIGHT);
    double end = high > low ? high : low + 1;
    across = new LinearScale(low, end, sheet.left() + LABEL_ROOM, sheet.right() - 10);
    up = new LinearScale(upwards.low(), upwards.high(), bottom, top);
  }

  double x(double value) {
    return across.at(value);
  }

  double y(double take) {
    return up.at(take);
  }

  double top() {
    return top;
  }

  double bottom() {
    return bottom;
  }

  double left() {
    return across.from();
  }

  double right() {
    return across.to();
  }

  /** Grid and labels upwards, ticks and caption sideways; moves the sheet below the frame. */
  void axes(String caption, DoubleFunction<String> words) {
    for (double tick : up.ticks(UP_TICKS)) {
      sheet.add(
          SvgElement.line(left(), y(tick), right(), y(tick)).with("stroke", Palette.RULE),
          Lettering.QUIET.at(left() - 8, y(tick) + 4, Anchor.END, scale.words(tick)));
    }
    sheet.add(SvgElement.line(left(), bottom, right(), bottom).with("stroke", Palette.SOFT_INK));
    for (double tick : across.ticks(sheet.size().narrow() ? NARROW_TICKS : WIDE_TICKS)) {
      sheet.add(
          SvgElement.line(x(tick), bottom, x(tick), bottom + 4).with("stroke", Palette.SOFT_INK),
          Lettering.QUIET.at(x(tick), bottom + 17, Anchor.MIDDLE, words.apply(tick)));
    }
    sheet.add(Lettering.QUIET.at((left() + right()) / 2, bottom + 35, Anchor.MIDDLE, caption));
    sheet.moveTo(bottom + 44);
  }

  /** A line through points given as value and take. */
  static SvgElement path(List<double[]> positions) {
    StringBuilder d = new StringBuilder();
    for (double[] position : positions) {
      d.append(d.isEmpty() ? "M" : " L");
      d.append(SvgElement.number(position[0])).append(' ').append(SvgElement.number(position[1]));
    }
    return SvgElement.of("path").with("d", d.toString()).with("fill", "none");
  }
}
