package org.taketally.plan.order;

/**
 * How many seasons that may be are enough to tell how many grafts an order needs: the surer it is
 * to be, the rarer the seasons that decide.
 */
public final class SeasonsEnough {

  /**
   * As sure as an order from records can be: rarer seasons than one in 100 can't be told from few.
   */
  public static final double SUREST_BY_RECORDS = 0.99;

  /** As sure as an order of stated takes can be: the spreads supposed hold no further. */
  public static final double SUREST_STATED = 0.999;

  /** Forty of them decide an order as sure as can be. */
  private static final int DRAWN = 4000;

  /** Seasons that decide, of those that aren't drawn but spread evenly from worst to best. */
  private static final int DECIDING = 10;

  private static final int LEAST_SPREAD = 1000;

  private SeasonsEnough() {}

  /**
   * Seasons to draw from a fit of records.
   *
   * @param assurance chance wanted, above 0 and at most {@value #SUREST_BY_RECORDS}
   * @return 4,000
   * @throws IllegalArgumentException if the chance is outside its range
   */
  public static int byRecords(double assurance) {
    requireTellable(assurance, SUREST_BY_RECORDS);
    return DRAWN;
  }

  /**
   * Seasons of stated takes.
   *
   * @param assurance chance wanted, above 0 and at most {@value #SUREST_STATED}
   * @return 1,000 or more
   * @throws IllegalArgumentException if the chance is outside its range
   */
  public static int stated(double assurance) {
    requireTellable(assurance, SUREST_STATED);
    return Math.max(LEAST_SPREAD, (int) Math.round(DECIDING / (1 - assurance)));
  }

  /**
   * Whether so rare seasons can be told.
   *
   * @param assurance chance wanted
   * @param surest {@link #SUREST_BY_RECORDS} or {@link #SUREST_STATED}
   * @return true up to it, give or take the last digits of a percentage typed
   */
  public static boolean tellable(double assurance, double surest) {
    return assurance <= surest + 1e-9;
  }

  private static void requireTellable(double assurance, double surest) {
    if (!(assurance > 0 && tellable(assurance, surest))) {
      throw new IllegalArgumentException(
          "how sure to be must be above 0 and at most %s, got %s: rarer seasons can't be told"
              .formatted(surest, assurance));
    }
  }
}
