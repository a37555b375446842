package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeFit;
import org.taketally.terms.Interval;

/**
 * Take against a number such as days of budwood storage, other things as in the records.
 *
 * @param column the number's column
 * @param unit its unit in words, e.g. {@code days}; empty if not known
 * @param points the curve, from the lowest to the highest recorded value; empty if the model can't
 *     follow the column
 * @param counted grafts and takes as counted, in ranges of the value
 * @param thinFrom value from which the records thin out; NaN if they don't
 * @param headline the answer in one sentence
 * @param tally grafts and takes behind it
 * @param options level used
 */
public record StorageCurve(
    String column,
    String unit,
    List<Point> points,
    List<Range> counted,
    double thinFrom,
    String headline,
    TakeCount tally,
    AnswerOptions options)
    implements Answer {

  public StorageCurve {
    points = List.copyOf(points);
    counted = List.copyOf(counted);
  }

  /**
   * A point of the curve.
   *
   * @param value in the column's unit
   * @param take adjusted take averaged over the other conditions of the records, 0 to 1
   * @param thin whether too few grafts lie near to trust it
   */
  public record Point(double value, Estimate take, boolean thin) {}

  /**
   * Grafts counted in a range of the value.
   *
   * @param from start, included
   * @param to end, included in the last range only
   * @param tally grafts and takes there
   * @param counted Wilson interval of the counted take, 0 to 1
   */
  public record Range(double from, double to, TakeCount tally, Interval counted) {}

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
  public static StorageCurve of(TakeFit fit, AnswerOptions options, String column) {
    return of(new Averaging(fit, options), options, column);
  }

  static StorageCurve of(Averaging averaging, AnswerOptions options, String column) {
    return new AlongNumber(averaging, options, column).curve();
  }

  @Override
  public String title() {
    return "How does take change with %s?".formatted(Words.column(column));
  }

  @Override
  public String text() {
    List<String> lines = new ArrayList<>(List.of(headline));
    if (!Double.isNaN(thinFrom)) {
      lines.add(
          "From %s on there are few grafts, so the curve there is guesswork."
              .formatted(Words.amount(thinFrom, unit)));
    }
    lines.add(
        "Other things are as in the records: wood kept long may also have been cut earlier, or by"
            + " other hands.");
    return String.join("\n", lines);
  }

  /** {@inheritDoc} The curve. */
  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            column.replace('_', '-') + "-curve",
            "Take along " + Words.column(column),
            AnswerColumn.FACTOR,
            AnswerColumn.VALUE,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.THIN);
    for (Point p : points) {
      table.row(column, p.value(), p.take(), p.thin());
    }
    return table.build();
  }

  /** {@inheritDoc} The curve, and the counts. */
  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder counts =
        AnswerTable.of(
            column.replace('_', '-') + "-counted",
            "Grafts counted along " + Words.column(column),
            AnswerColumn.FACTOR,
            AnswerColumn.VALUE_FROM,
            AnswerColumn.VALUE_TO,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH);
    for (Range r : counted) {
      counts.row(column, r.from(), r.to(), r.tally(), r.counted());
    }
    return List.of(table(), counts.build());
  }
}
