package org.taketally.plan.order;

/**
 * What a graft takes of a stick of budwood.
 *
 * @param budsPerGraft buds a graft uses, 1 or more
 * @param budsPerStick usable buds on a stick, at least {@code budsPerGraft}
 * @param spoiled share of sticks that can't be used when it comes to grafting, 0 or more and below
 *     1
 */
public record WoodUse(int budsPerGraft, int budsPerStick, double spoiled) {

  public WoodUse {
    if (budsPerGraft < 1) {
      throw new IllegalArgumentException("a graft uses 1 bud or more, got " + budsPerGraft);
    }
    if (budsPerStick < budsPerGraft) {
      throw new IllegalArgumentException(
          "a stick must hold the buds of one graft (%d) at least, got %d"
              .formatted(budsPerGraft, budsPerStick));
    }
    if (!(spoiled >= 0 && spoiled < 1)) {
      throw new IllegalArgumentException(
          "the share of sticks that spoil must be 0 or more and below 1, e.g. 0.1, got " + spoiled);
    }
  }

  /**
   * Grafts from one sound stick; buds left over at its end are too few for another.
   *
   * @return 1 or more
   */
  public int graftsPerStick() {
    return budsPerStick / budsPerGraft;
  }

  /**
   * Sticks to cut.
   *
   * @param grafts grafts to make, 0 or more
   * @return sticks, spoiled ones included
   */
  public int sticks(int grafts) {
    int sound = (grafts + graftsPerStick() - 1) / graftsPerStick();
    return (int) Math.ceil(sound / (1 - spoiled) - 1e-9);
  }

  /**
   * Grafts that some sticks are enough for.
   *
   * @param sticks sticks cut, 0 or more
   * @return grafts
   */
  public int graftsFrom(int sticks) {
    return (int) Math.floor(sticks * (1 - spoiled) + 1e-9) * graftsPerStick();
  }
}
