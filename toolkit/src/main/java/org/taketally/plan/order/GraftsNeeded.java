package org.taketally.plan.order;

import java.util.OptionalInt;

/** The fewest grafts that make an order as sure as wanted. */
public final class GraftsNeeded {

  /** Beyond this many grafts for one line, more grafts are not the answer. */
  public static final int MOST = 1_000_000;

  private GraftsNeeded() {}

  /**
   * The fewest grafts.
   *
   * @param takes what may become of the grafts
   * @param trees trees wanted, 1 or more
   * @param assurance chance wanted of having them, above 0 and below 1, e.g. 0.9
   * @return grafts; empty if not even {@value #MOST} would do
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static OptionalInt fewest(LotTakes takes, int trees, double assurance) {
    requireTrees(trees);
    requireAssurance(assurance);
    int enough = trees;
    while (takes.probabilityOfAtLeast(trees, enough) < assurance) {
      if (enough == MOST) {
        return OptionalInt.empty();
      }
      enough = (int) Math.min(MOST, 2L * enough);
    }
    int tooFew = enough == trees ? trees - 1 : Math.max(trees - 1, enough / 2 - 1);
    while (enough - tooFew > 1) {
      int middle = (enough + tooFew) >>> 1;
      if (takes.probabilityOfAtLeast(trees, middle) >= assurance) {
        enough = middle;
      } else {
        tooFew = middle;
      }
    }
    return OptionalInt.of(enough);
  }

  static void requireTrees(int trees) {
    if (trees < 1) {
      throw new IllegalArgumentException("an order is for 1 tree or more, got " + trees);
    }
  }

  static void requireAssurance(double assurance) {
    if (!(assurance > 0 && assurance < 1)) {
      throw new IllegalArgumentException(
          "how sure to be must lie between 0 and 1, e.g. 0.9 for 9 seasons in 10, got "
              + assurance);
    }
  }
}
