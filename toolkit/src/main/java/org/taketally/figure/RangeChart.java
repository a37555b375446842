package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.answers.Estimate;
import org.taketally.terms.Interval;
import org.taketally.wording.figures.OwnChartWords;

/**
 * A chart of one's own in the style of all figures: lines, each a name, a value and its likely
 * range. Immutable; each {@code with} gives a new one.
 *
 * <pre>{@code
 * RangeChart.of("Take by bench").withAxis("take", Scale.PERCENT)
 *     .withRange("by the door", 0.71, 0.62, 0.79).svg()
 * }</pre>
 *
 * @param title what is shown
 * @param ranges the lines, top to bottom
 * @param axis what is measured
 * @param scale how values are written
 * @param bands shaded stretches of the axis
 * @param note what to know about it; may be empty
 */
public record RangeChart(
    String title, List<Range> ranges, String axis, Scale scale, List<Band> bands, String note) {

  private static final double ROOM = 0.04;

  /**
   * One line.
   *
   * @param name what it is about
   * @param estimate value and likely range
   */
  public record Range(String name, Estimate estimate) {}

  /**
   * A shaded stretch of the axis.
   *
   * @param from where it begins
   * @param to where it ends
   * @param name what it means
   */
  public record Band(double from, double to, String name) {}

  public RangeChart {
    ranges = List.copyOf(ranges);
    bands = List.copyOf(bands);
  }

  /**
   * An empty chart.
   *
   * @param title what is shown
   * @return plain numbers along the axis, no lines yet
   */
  public static RangeChart of(String title) {
    return new RangeChart(title, List.of(), "", Scale.NUMBER, List.of(), "");
  }

  /**
   * With one more line.
   *
   * @param name what it is about
   * @param value where the mark stands
   * @param low lower end of its likely range, at most {@code value}
   * @param high upper end, at least {@code value}
   * @return a new chart
   * @throws IllegalArgumentException if they aren't numbers in that order
   */
  public RangeChart withRange(String name, double value, double low, double high) {
    if (!(low <= value && value <= high && Double.isFinite(high - low))) {
      throw new IllegalArgumentException(
          "\"%s\" needs low <= value <= high, got %s, %s and %s".formatted(name, low, value, high));
    }
    return withRange(name, new Estimate(value, new Interval(low, high, 0.95)));
  }

  /**
   * With one more line.
   *
   * @param name what it is about
   * @param estimate value and likely range
   * @return a new chart
   */
  public RangeChart withRange(String name, Estimate estimate) {
    List<Range> more = new ArrayList<>(ranges);
    more.add(new Range(name, estimate));
    return new RangeChart(title, more, axis, scale, bands, note);
  }

  /**
   * With another axis.
   *
   * @param caption what is measured
   * @param values how values are written
   * @return a new chart
   */
  public RangeChart withAxis(String caption, Scale values) {
    return new RangeChart(title, ranges, caption, values, bands, note);
  }

  /**
   * With a shaded stretch, such as a margin.
   *
   * @param from where it begins
   * @param to where it ends, above {@code from}
   * @param name what it means
   * @return a new chart
   */
  public RangeChart withBand(double from, double to, String name) {
    List<Band> more = new ArrayList<>(bands);
    more.add(new Band(from, to, name));
    return new RangeChart(title, ranges, axis, scale, more, note);
  }

  /**
   * With a sentence below.
   *
   * @param text what to know about it
   * @return a new chart
   */
  public RangeChart withNote(String text) {
    return new RangeChart(title, ranges, axis, scale, bands, text);
  }

  /**
   * Draws it.
   *
   * @return an {@code <svg>} element, {@link FigureSize#WIDE}
   * @throws IllegalStateException if it has no lines
   */
  public String svg() {
    return svg(FigureSize.WIDE);
  }

  /**
   * Draws it.
   *
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   * @throws IllegalStateException if it has no lines
   */
  public String svg(FigureSize size) {
    if (ranges.isEmpty()) {
      throw new IllegalStateException(
          "the chart has no lines yet: withRange(name, value, low, high)");
    }
    Sheet sheet =
        new Sheet(
            size, title, "", ranges.stream().map(this::words).collect(Collectors.joining(" ")));
    List<Line> lines = ranges.stream().map(each -> (Line) line(each)).toList();
    RowChart.draw(sheet, LongList.cut(lines, OwnChartWords::gap), ruler(), "");
    sheet.note(note);
    return sheet.svg();
  }

  private Line.Row line(Range range) {
    Line.Caption caption =
        new Line.Caption(range.name(), "", scale.words(range.estimate().value()), words(range));
    return Line.Row.of(caption, Mark.CIRCLE, range.estimate());
  }

  private String words(Range range) {
    Estimate estimate = range.estimate();
    return OwnChartWords.range(
        range.name(),
        scale.words(estimate.value()),
        scale.words(estimate.low()),
        scale.words(estimate.high()));
  }

  private Axis ruler() {
    double low = ranges.stream().mapToDouble(each -> each.estimate().low()).min().orElseThrow();
    double high = ranges.stream().mapToDouble(each -> each.estimate().high()).max().orElseThrow();
    for (Band band : bands) {
      low = Math.min(low, band.from());
      high = Math.max(high, band.to());
    }
    double room = Math.max(ROOM * (high - low), 1e-6);
    List<Axis.Zone> zones =
        bands.stream().map(b -> new Axis.Zone(b.from(), b.to(), b.name(), true)).toList();
    boolean percent = scale == Scale.PERCENT;
    return new Axis(
        percent ? Math.max(0, low - room) : low - room,
        percent ? Math.min(1, high + room) : high + room,
        axis,
        scale::words,
        zones,
        low <= 0 && high >= 0 && !percent);
  }
}
