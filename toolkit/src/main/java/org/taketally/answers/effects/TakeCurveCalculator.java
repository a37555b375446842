package org.taketally.answers.effects;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;

/** Follows take along a column of numbers: the curve, where it is thin, and how it changes. */
public final class TakeCurveCalculator {

  /** Grafts that must lie within a tenth of the range of a point. Common practice, no source. */
  static final int LEAST_NEAR = 30;

  private static final int STEPS = 40;
  private static final double NEAR = 0.1;

  private final MarginalTakes averaging;
  private final AnswerOptions options;
  private final String column;
  private final String unit;
  private final double[] recorded;
  private final TakeCount tally;

  private TakeCurveCalculator(MarginalTakes averaging, AnswerOptions options, String column) {
    Cells cells = averaging.fit().cells();
    this.averaging = averaging;
    this.options = options;
    this.column = column;
    this.unit = unit(column);
    this.recorded = cells.measure(column).values();
    this.tally = TakeCounter.all(cells);
  }

  /**
   * From a fit.
   *
   * @param fit a fit whose cells have the column; without the column in its model, the counts alone
   *     are given and the headline says so
   * @param options level, margin, draws and seed
   * @param column a column of numbers, e.g. {@code storage_days}
   * @return the curve
   * @throws IllegalArgumentException if the cells have no such column of numbers
   */
  public static TakeCurve of(TakeFit fit, AnswerOptions options, String column) {
    return of(MarginalTakes.of(fit, options), options, column);
  }

  public static TakeCurve of(MarginalTakes averaging, AnswerOptions options, String column) {
    return new TakeCurveCalculator(averaging, options, column).curve();
  }

  private TakeCurve curve() {
    List<TakeCurve.Range> counted =
        CountedRanges.of(averaging.fit().cells(), column, options.coverage());
    if (!averaging.knows(column)) {
      return new TakeCurve(
          column, unit, List.of(), counted, Double.NaN, Optional.empty(), tally, options);
    }
    double[] values = grid();
    double[][] takes = averaging.takes(column, values);
    List<Point> points =
        IntStream.range(0, values.length)
            .mapToObj(
                k ->
                    new Point(
                        values[k],
                        DrawSummary.estimate(DrawSummary.column(takes, k), options.coverage()),
                        near(values[k], values) < LEAST_NEAR))
            .toList();
    return new TakeCurve(
        column, unit, points, counted, thinFrom(points), change(points, takes), tally, options);
  }

  /** From the lowest to the highest recorded value; whole steps where all values are whole. */
  private double[] grid() {
    double low = known().min().orElseThrow();
    double high = known().max().orElseThrow();
    double step = (high - low) / STEPS;
    if (known().allMatch(value -> value == Math.rint(value))) {
      step = Math.max(1, Math.ceil(step));
    }
    int count = (int) Math.ceil((high - low) / step - 1e-9);
    double[] grid = new double[count + 1];
    for (int k = 0; k <= count; k++) {
      grid[k] = k == count ? high : low + k * step;
    }
    return grid;
  }

  private java.util.stream.DoubleStream known() {
    return Arrays.stream(recorded).filter(value -> !Double.isNaN(value));
  }

  private long near(double value, double[] grid) {
    double reach = NEAR * (grid[grid.length - 1] - grid[0]);
    int[] grafts = averaging.fit().cells().grafts();
    return IntStream.range(0, recorded.length)
        .filter(i -> Math.abs(recorded[i] - value) <= reach)
        .mapToLong(i -> grafts[i])
        .sum();
  }

  private static double thinFrom(List<Point> points) {
    int last = points.size();
    while (last > 0 && points.get(last - 1).thin()) {
      last--;
    }
    return last == points.size() ? Double.NaN : points.get(last).value();
  }

  private Optional<TakeCurve.Change> change(List<Point> points, double[][] takes) {
    int[] solid = IntStream.range(0, points.size()).filter(k -> !points.get(k).thin()).toArray();
    if (solid.length < 2) {
      return Optional.empty();
    }
    int from = solid[0];
    int to = solid[solid.length - 1];
    return Optional.of(
        new TakeCurve.Change(
            points.get(from), points.get(to), change(takes, from, to), turn(points, takes, solid)));
  }

  /** A clear top or bottom between the ends, which the ends alone would hide. */
  private Optional<TakeCurve.Turn> turn(List<Point> points, double[][] takes, int[] solid) {
    Comparator<Integer> byTake = Comparator.comparingDouble(k -> points.get(k).take().value());
    List<Integer> order = Arrays.stream(solid).boxed().sorted(byTake).toList();
    int from = solid[0];
    int to = solid[solid.length - 1];
    int lowest = order.get(0);
    int highest = order.get(order.size() - 1);
    int upper = byTake.compare(from, to) > 0 ? from : to;
    int lower = upper == from ? to : from;
    if (change(takes, upper, highest).low() > 0) {
      return Optional.of(new TakeCurve.Turn(true, points.get(highest)));
    }
    return change(takes, lower, lowest).high() < 0
        ? Optional.of(new TakeCurve.Turn(false, points.get(lowest)))
        : Optional.empty();
  }

  private Estimate change(double[][] takes, int from, int to) {
    return DrawSummary.estimate(
        Arrays.stream(takes).mapToDouble(row -> row[to] - row[from]).toArray(), options.coverage());
  }

  /** The unit a column's name ends in. */
  private static String unit(String column) {
    String last = column.substring(column.lastIndexOf('_') + 1).toLowerCase(Locale.ROOT);
    return switch (last) {
      case "days", "hours", "weeks", "mm", "cm" -> last;
      case "c" -> "°C";
      default -> "";
    };
  }
}
