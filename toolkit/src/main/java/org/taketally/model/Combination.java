package org.taketally.model;

import java.util.ArrayList;
import java.util.List;
import org.taketally.cells.Factor;

/** The column of two columns together, such as cultivar and rootstock. */
final class Combination {

  /** Between the names of the two levels. */
  private static final String BY = " \u00d7 ";

  private Combination() {}

  /** Levels that occur, in the order of the first column, then of the second. */
  static Factor of(String name, Factor first, Factor second) {
    int width = second.size();
    boolean[] occurs = new boolean[Math.multiplyExact(first.size(), width)];
    for (int i = 0; i < first.cells(); i++) {
      if (both(first, second, i)) {
        occurs[first.code(i) * width + second.code(i)] = true;
      }
    }
    int[] number = new int[occurs.length];
    List<String> levels = new ArrayList<>();
    for (int key = 0; key < occurs.length; key++) {
      number[key] = levels.size();
      if (occurs[key]) {
        levels.add(level(first.levels().get(key / width), second.levels().get(key % width)));
      }
    }
    int[] codes = new int[first.cells()];
    for (int i = 0; i < codes.length; i++) {
      codes[i] =
          both(first, second, i) ? number[first.code(i) * width + second.code(i)] : Factor.MISSING;
    }
    return new Factor(name, levels, codes);
  }

  /** The name of a combination. */
  static String level(String first, String second) {
    return first + BY + second;
  }

  private static boolean both(Factor first, Factor second, int i) {
    return first.code(i) != Factor.MISSING && second.code(i) != Factor.MISSING;
  }
}
