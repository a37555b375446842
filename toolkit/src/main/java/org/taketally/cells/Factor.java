package org.taketally.cells;

import java.util.Arrays;
import java.util.List;

/**
 * A column of levels over the cells: cultivar, rootstock, method.
 *
 * @param name column name
 * @param levels level names, in the order that decides the base level (first)
 * @param codes one per cell: index into {@code levels}, or {@link #MISSING}
 */
public record Factor(String name, List<String> levels, int[] codes) {

  /** Code of a cell whose level was not recorded. */
  public static final int MISSING = -1;

  public Factor {
    levels = List.copyOf(levels);
    codes = codes.clone();
    for (int code : codes) {
      if (code < MISSING || code >= levels.size()) {
        throw new IllegalArgumentException(
            "column %s has %d levels, got level number %d".formatted(name, levels.size(), code));
      }
    }
  }

  /**
   * One per cell: index into {@code levels}, or {@link #MISSING}.
   *
   * @return a copy of the column
   */
  @Override
  public int[] codes() {
    return codes.clone();
  }

  /**
   * The level of one cell.
   *
   * @param cell 0 to cells - 1
   * @return index into {@code levels}, or {@link #MISSING}
   */
  public int code(int cell) {
    return codes[cell];
  }

  /**
   * Number of cells.
   *
   * @return 0 or more
   */
  public int cells() {
    return codes.length;
  }

  /**
   * Numbers that name groups as levels: bed 1, 2, 3.
   *
   * @param numbers a column of numbers
   * @return one level a number, in their order; whole numbers without a point
   */
  public static Factor of(Measure numbers) {
    double[] values = numbers.values();
    double[] distinct =
        Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().distinct().toArray();
    int[] codes = new int[values.length];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = Double.isNaN(values[i]) ? MISSING : Arrays.binarySearch(distinct, values[i]);
    }
    return new Factor(
        numbers.name(), Arrays.stream(distinct).mapToObj(Factor::plain).toList(), codes);
  }

  private static String plain(double number) {
    return number == Math.rint(number) && Math.abs(number) < 1e15
        ? Long.toString((long) number)
        : Double.toString(number);
  }

  /**
   * Number of levels.
   *
   * @return 0 or more
   */
  public int size() {
    return levels.size();
  }

  /**
   * The index of a level.
   *
   * @param level a level name
   * @return its index, or {@link #MISSING} if there is no such level
   */
  public int indexOf(String level) {
    return levels.indexOf(level);
  }

  /**
   * Levels that cells really have; others may be left over from cells taken away.
   *
   * @return 0 to {@link #size()}
   */
  public int levelsMet() {
    return (int) Arrays.stream(codes).filter(code -> code != MISSING).distinct().count();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Factor that
        && name.equals(that.name)
        && levels.equals(that.levels)
        && Arrays.equals(codes, that.codes);
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + Arrays.hashCode(codes);
  }

  @Override
  public String toString() {
    return name + levels;
  }
}
