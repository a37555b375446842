package org.taketally.cells;

import java.util.List;
import java.util.Optional;

/**
 * Rows to be counted into cells, and how their values are reached: rows of a frame, or rows passing
 * by while files are read.
 *
 * @param <R> one row
 */
interface CountedRows<R> {

  /** The names of all columns there are. */
  List<String> columns();

  /** A coder, for these rows only, of the values of a column; none if there is no such column. */
  Optional<ColumnCoder<R>> coder(String column);

  boolean assessed(R row);

  /** Grafts made, 1 or more. */
  int grafts(R row);

  /** Grafts alive when assessed; meaningless unless {@link #assessed}. */
  int takes(R row);
}
