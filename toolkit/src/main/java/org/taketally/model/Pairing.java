package org.taketally.model;

import java.util.ArrayList;
import java.util.List;
import org.taketally.cells.Factor;

/** The column of cultivar and rootstock together. */
final class Pairing {

  private Pairing() {}

  /** Levels that occur, in the order of cultivars, then rootstocks. */
  static Factor of(Factor cultivar, Factor rootstock) {
    int width = rootstock.size();
    boolean[] occurs = new boolean[Math.multiplyExact(cultivar.size(), width)];
    for (int i = 0; i < cultivar.codes().length; i++) {
      if (both(cultivar, rootstock, i)) {
        occurs[cultivar.codes()[i] * width + rootstock.codes()[i]] = true;
      }
    }
    int[] number = new int[occurs.length];
    List<String> levels = new ArrayList<>();
    for (int key = 0; key < occurs.length; key++) {
      number[key] = levels.size();
      if (occurs[key]) {
        levels.add(
            cultivar.levels().get(key / width) + " \u00d7 " + rootstock.levels().get(key % width));
      }
    }
    int[] codes = new int[cultivar.codes().length];
    for (int i = 0; i < codes.length; i++) {
      codes[i] =
          both(cultivar, rootstock, i)
              ? number[cultivar.codes()[i] * width + rootstock.codes()[i]]
              : Factor.MISSING;
    }
    return new Factor(TakeModel.PAIRING, levels, codes);
  }

  private static boolean both(Factor cultivar, Factor rootstock, int i) {
    return cultivar.codes()[i] != Factor.MISSING && rootstock.codes()[i] != Factor.MISSING;
  }
}
