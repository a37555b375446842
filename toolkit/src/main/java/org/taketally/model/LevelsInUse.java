package org.taketally.model;

import java.util.ArrayList;
import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/**
 * A column renumbered to the levels that occur.
 *
 * @param levels those with cells, in the column's order
 * @param codes index into {@code levels}, one a cell
 */
record LevelsInUse(List<String> levels, int[] codes) {

  static LevelsInUse of(Factor factor) {
    boolean[] occurs = new boolean[factor.size()];
    for (int code : factor.codes()) {
      occurs[code] = true;
    }
    int[] newCode = new int[factor.size()];
    List<String> levels = new ArrayList<>();
    for (int code = 0; code < occurs.length; code++) {
      newCode[code] = levels.size();
      if (occurs[code]) {
        levels.add(factor.levels().get(code));
      }
    }
    int[] codes = new int[factor.cells()];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = newCode[factor.code(i)];
    }
    return new LevelsInUse(levels, codes);
  }

  /**
   * Rows of several grafts, and one level more for the cells of single grafts, if there are any.
   */
  static LevelsInUse ofRows(Factor rows) {
    List<String> levels = new ArrayList<>(rows.levels());
    levels.add(Cells.SINGLE_GRAFTS);
    int[] codes = new int[rows.cells()];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = rows.code(i) == Factor.MISSING ? rows.size() : rows.code(i);
    }
    return of(new Factor(rows.name(), levels, codes));
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return levels.hashCode();
  }
}
