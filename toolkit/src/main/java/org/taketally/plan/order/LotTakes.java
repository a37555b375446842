package org.taketally.plan.order;

/**
 * What may become of a lot of grafts that is not made yet: the chance that at least so many of so
 * many end as wanted. Adding a graft never lowers the chance.
 */
public interface LotTakes {

  /**
   * The chance that at least {@code trees} grafts end as wanted.
   *
   * @param trees 0 or more
   * @param grafts grafts made, 0 or more
   * @return chance, 0 to 1; 0 if {@code trees} is above {@code grafts}
   */
  double probabilityOfAtLeast(int trees, int grafts);

  /**
   * The share expected to end as wanted.
   *
   * @return 0 to 1
   */
  double expectedShare();

  /**
   * The most trees that can be promised.
   *
   * @param grafts grafts made, 0 or more
   * @param assurance chance wanted, above 0 and below 1
   * @return the largest number with at least that chance, 0 to {@code grafts}
   */
  default int assuredTrees(int grafts, double assurance) {
    int sure = 0;
    int tooMany = grafts + 1;
    while (tooMany - sure > 1) {
      int middle = (sure + tooMany) >>> 1;
      if (probabilityOfAtLeast(middle, grafts) >= assurance) {
        sure = middle;
      } else {
        tooMany = middle;
      }
    }
    return sure;
  }
}
