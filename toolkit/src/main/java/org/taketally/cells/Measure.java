package org.taketally.cells;

import java.util.Arrays;

/**
 * A column of numbers over the cells: storage days, diameters.
 *
 * @param name column name, unit included, e.g. {@code storage_days}
 * @param values one per cell; NaN where not recorded
 */
public record Measure(String name, double[] values) {

  public Measure {
    values = values.clone();
  }

  /**
   * One per cell; NaN where not recorded.
   *
   * @return a copy of the column
   */
  @Override
  public double[] values() {
    return values.clone();
  }

  /**
   * The number of one cell.
   *
   * @param cell 0 to cells - 1
   * @return NaN where not recorded
   */
  public double value(int cell) {
    return values[cell];
  }

  /**
   * Number of cells.
   *
   * @return 0 or more
   */
  public int cells() {
    return values.length;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Measure that
        && name.equals(that.name)
        && Arrays.equals(values, that.values);
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + Arrays.hashCode(values);
  }

  @Override
  public String toString() {
    return name + "[" + values.length + "]";
  }
}
