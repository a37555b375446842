package org.taketally.cells;

import it.unimi.dsi.fastutil.ints.IntArrayList;

/** Gives each row of several grafts a code of its own; single grafts have none. */
final class RowNumbers {

  private final IntArrayList numbers = new IntArrayList();
  private int row;

  /** The code of the next row, whether or not it is counted. */
  int next(int grafts, boolean counted) {
    row++;
    if (!counted || grafts < 2) {
      return Factor.MISSING;
    }
    numbers.add(row);
    return numbers.size() - 1;
  }

  /** The row a code stands for, by its place among the rows read. */
  String name(int code) {
    return "row " + numbers.getInt(code);
  }
}
