package org.taketally.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.taketally.figure.Sheet.KeyEntry;
import org.taketally.wording.figures.OwnChartWords;

/**
 * A chart of one's own in the style of all figures: lines and points over a number, points with
 * their likely ranges. Immutable; each {@code with} gives a new one.
 *
 * <pre>{@code
 * LineChart.of("Take after storage").withAxes("days in store", "take", Scale.PERCENT)
 *     .withLine("expected", days, takes).svg()
 * }</pre>
 */
public final class LineChart {

  private static final List<Mark> MARKS =
      List.of(Mark.CIRCLE, Mark.DIAMOND, Mark.TRIANGLE, Mark.RING, Mark.SQUARE);
  private static final List<String> DASHES = List.of("none", "7 4", "2 3", "9 3 2 3", "12 5");

  /** One line, or a set of points; without low and high it has no ranges. */
  private record Series(
      String name, boolean joined, double[] x, double[] y, double[] low, double[] high) {

    DoubleStream heights() {
      return Arrays.stream(new double[][] {y, low, high}).flatMapToDouble(Arrays::stream);
    }

    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  private final String title;
  private final String across;
  private final String upwards;
  private final Scale scale;
  private final List<Series> series;
  private final String note;

  private LineChart(String title, String[] axes, Scale scale, List<Series> series, String note) {
    this.title = title;
    this.across = axes[0];
    this.upwards = axes[1];
    this.scale = scale;
    this.series = List.copyOf(series);
    this.note = note;
  }

  /**
   * An empty chart.
   *
   * @param title what is shown
   * @return plain numbers along both axes, nothing drawn yet
   */
  public static LineChart of(String title) {
    return new LineChart(title, new String[] {"", ""}, Scale.NUMBER, List.of(), "");
  }

  /**
   * With other axes.
   *
   * @param sideways what is measured sideways, with its unit
   * @param up what is measured upwards
   * @param values how values upwards are written
   * @return a new chart
   */
  public LineChart withAxes(String sideways, String up, Scale values) {
    return new LineChart(title, new String[] {sideways, up}, values, series, note);
  }

  /**
   * With a line.
   *
   * @param name what it shows
   * @param x places sideways, at least two
   * @param y heights, as many
   * @return a new chart
   * @throws IllegalArgumentException if they aren't as many, or not numbers
   */
  public LineChart withLine(String name, double[] x, double[] y) {
    return with(new Series(name, true, x.clone(), y.clone(), new double[0], new double[0]), 2);
  }

  /**
   * With points.
   *
   * @param name what they show
   * @param x places sideways, at least one
   * @param y heights, as many
   * @return a new chart
   * @throws IllegalArgumentException if they aren't as many, or not numbers
   */
  public LineChart withPoints(String name, double[] x, double[] y) {
    return with(new Series(name, false, x.clone(), y.clone(), new double[0], new double[0]), 1);
  }

  /**
   * With points and their likely ranges.
   *
   * @param name what they show
   * @param x places sideways, at least one
   * @param y heights, as many
   * @param low lower ends, as many
   * @param high upper ends, as many
   * @return a new chart
   * @throws IllegalArgumentException if they aren't as many, or not numbers
   */
  public LineChart withRanges(String name, double[] x, double[] y, double[] low, double[] high) {
    if (low.length != x.length || high.length != x.length) {
      throw new IllegalArgumentException(
          "\"%s\" needs as many ends of ranges as places: %d, got %d and %d"
              .formatted(name, x.length, low.length, high.length));
    }
    return with(new Series(name, false, x.clone(), y.clone(), low.clone(), high.clone()), 1);
  }

  private LineChart with(Series one, int atLeast) {
    if (one.x().length != one.y().length || one.x().length < atLeast) {
      throw new IllegalArgumentException(
          "\"%s\" needs %d or more places and as many heights, got %d and %d"
              .formatted(one.name(), atLeast, one.x().length, one.y().length));
    }
    if (!DoubleStream.concat(Arrays.stream(one.x()), one.heights()).allMatch(Double::isFinite)) {
      throw new IllegalArgumentException(
          "\"%s\" has a value that is no number; leave it out".formatted(one.name()));
    }
    List<Series> more = new ArrayList<>(series);
    more.add(one);
    return new LineChart(title, new String[] {across, upwards}, scale, more, note);
  }

  /**
   * With a sentence below.
   *
   * @param text what to know about it
   * @return a new chart
   */
  public LineChart withNote(String text) {
    return new LineChart(title, new String[] {across, upwards}, scale, series, text);
  }

  /**
   * Draws it.
   *
   * @return an {@code <svg>} element, {@link FigureSize#WIDE}
   * @throws IllegalStateException if nothing is to be drawn
   */
  public String svg() {
    return svg(FigureSize.WIDE);
  }

  /**
   * Draws it.
   *
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   * @throws IllegalStateException if nothing is to be drawn
   */
  public String svg(FigureSize size) {
    if (series.isEmpty()) {
      throw new IllegalStateException("the chart is empty: withLine(name, x, y)");
    }
    String words = series.stream().map(this::words).collect(Collectors.joining(" "));
    Sheet sheet = new Sheet(size, title, upwards, words);
    sheet.key(IntStream.range(0, series.size()).mapToObj(this::keyEntry).toList());
    Plot plot = plot(sheet);
    plot.axes(across, SvgElement::number);
    for (int i = 0; i < series.size(); i++) {
      draw(sheet, plot, i);
    }
    sheet.note(note);
    return sheet.svg();
  }

  private String words(Series one) {
    return OwnChartWords.run(one.name(), place(one, 0), place(one, one.x().length - 1));
  }

  private String[] place(Series one, int k) {
    return new String[] {scale.words(one.y()[k]), SvgElement.number(one.x()[k])};
  }

  private KeyEntry keyEntry(int i) {
    return series.get(i).joined()
        ? new KeyEntry(
            (x, y) -> stroke(SvgElement.line(x - 9, y, x + 9, y), i), series.get(i).name())
        : KeyEntry.of(mark(i), series.get(i).name());
  }

  private static Mark mark(int i) {
    return MARKS.get(i % MARKS.size());
  }

  private static SvgElement stroke(SvgElement element, int i) {
    return element
        .with("stroke", mark(i).solid())
        .with("stroke-width", 2.2)
        .with("stroke-dasharray", DASHES.get(i % DASHES.size()));
  }

  private Plot plot(Sheet sheet) {
    double[] x = series.stream().flatMapToDouble(one -> Arrays.stream(one.x())).toArray();
    double[] y = series.stream().flatMapToDouble(Series::heights).toArray();
    LinearScale sides = LinearScale.around(min(x), max(x), 0, 1);
    LinearScale ends = LinearScale.around(min(y), max(y), 0, 1);
    boolean share = scale == Scale.PERCENT && min(y) >= 0 && max(y) <= 1;
    return new Plot(
        sheet,
        sides.low(),
        sides.high(),
        share ? new Plot.Upwards(0, 1, scale) : new Plot.Upwards(ends.low(), ends.high(), scale));
  }

  private static double min(double[] values) {
    return Arrays.stream(values).min().orElseThrow();
  }

  private static double max(double[] values) {
    double most = Arrays.stream(values).max().orElseThrow();
    return most > min(values) ? most : most + 1; // a single place still needs a scale
  }

  private void draw(Sheet sheet, Plot plot, int i) {
    Series one = series.get(i);
    if (one.joined()) {
      List<double[]> places = new ArrayList<>();
      for (int k = 0; k < one.x().length; k++) {
        places.add(new double[] {plot.x(one.x()[k]), plot.y(one.y()[k])});
      }
      sheet.add(stroke(Plot.path(places), i));
      return;
    }
    for (int k = 0; k < one.x().length; k++) {
      double x = plot.x(one.x()[k]);
      if (one.low().length > 0) {
        sheet.add(
            SvgElement.line(x, plot.y(one.low()[k]), x, plot.y(one.high()[k]))
                .with("stroke", mark(i).soft())
                .with("stroke-width", 4)
                .with("stroke-linecap", "round"));
      }
      sheet.add(mark(i).at(x, plot.y(one.y()[k])));
    }
  }
}
