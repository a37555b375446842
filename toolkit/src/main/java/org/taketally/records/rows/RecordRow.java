package org.taketally.records.rows;

import java.util.Arrays;
import org.taketally.records.columns.RecordColumn;

/**
 * One row of records while it passes by. The same object is used for every row: take out what is
 * needed, don't keep it.
 */
public final class RecordRow {

  /** Code of a level or day that isn't recorded. */
  public static final int MISSING = FieldValue.MISSING;

  /** Takes of which is said only that they are all grafts of the row. */
  public static final double ALL_GRAFTS = Double.POSITIVE_INFINITY;

  private static final int UNASSESSED = -1;

  private final int[] codes;
  private final double[] numbers;
  private final String[] texts;
  private int grafts;
  private int takes;
  private boolean counted;

  public RecordRow(int columns) {
    codes = new int[columns];
    numbers = new double[columns];
    texts = new String[columns];
    clear();
  }

  public void clear() {
    Arrays.fill(codes, MISSING);
    Arrays.fill(numbers, Double.NaN);
    Arrays.fill(texts, null);
    grafts = 1;
    takes = UNASSESSED;
    counted = false;
  }

  void set(int column, FieldValue value) {
    codes[column] = value.code();
    numbers[column] = value.number();
    texts[column] = value.text();
  }

  public void setCode(int column, int code) {
    codes[column] = code;
  }

  public void setNumber(int column, double number) {
    numbers[column] = number;
  }

  public void setResult(int theGrafts, int theTakes) {
    counted = true;
    grafts = theGrafts;
    takes = theTakes;
    numbers[RecordsLayout.place(RecordColumn.GRAFTS)] = theGrafts;
    numbers[RecordsLayout.place(RecordColumn.TAKES)] = theTakes;
  }

  public void setUnassessed(int theGrafts) {
    counted = true;
    grafts = theGrafts;
    takes = UNASSESSED;
    numbers[RecordsLayout.place(RecordColumn.GRAFTS)] = theGrafts;
    numbers[RecordsLayout.place(RecordColumn.TAKES)] = Double.NaN;
  }

  /** Whether its grafts, and that its takes are known or unknown, could be made out. */
  public boolean counted() {
    return counted;
  }

  /**
   * The level or day in a column.
   *
   * @param column its number in the {@link RecordsLayout}
   * @return number of the level, or of the day since 1970-01-01, or {@link #MISSING}
   */
  public int code(int column) {
    return codes[column];
  }

  /**
   * The number in a column.
   *
   * @param column its number in the {@link RecordsLayout}
   * @return in the unit of the column; NaN if not recorded
   */
  public double number(int column) {
    return numbers[column];
  }

  /**
   * The free text in a column.
   *
   * @param column its number in the {@link RecordsLayout}
   * @return the text, or null if not recorded
   */
  public String text(int column) {
    return texts[column];
  }

  public int code(RecordColumn column) {
    return codes[RecordsLayout.place(column)];
  }

  public double number(RecordColumn column) {
    return numbers[RecordsLayout.place(column)];
  }

  public String text(RecordColumn column) {
    return texts[RecordsLayout.place(column)];
  }

  public boolean has(RecordColumn column) {
    return codes[RecordsLayout.place(column)] != MISSING;
  }

  /**
   * Grafts made.
   *
   * @return 1 or more
   */
  public int grafts() {
    return grafts;
  }

  /**
   * Grafts alive when assessed.
   *
   * @return 0 to grafts; meaningless unless {@link #assessed}
   */
  public int takes() {
    return takes;
  }

  /**
   * Whether the result is known.
   *
   * @return false if the label was lost or nobody looked
   */
  public boolean assessed() {
    return takes != UNASSESSED;
  }
}
