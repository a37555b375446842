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

  /** Seasons that fall short, of those drawn from a fit. */
  private static final int SHORT_DRAWN = 40;

  private static final int LEAST_DRAWN = 400;

  /** The same of seasons that aren't drawn but spread evenly, from worst to best. */
  private static final int SHORT_SPREAD = 10;

  private static final int LEAST_SPREAD = 1000;

  private SeasonsEnough() {}

  /**
   * Seasons to draw from a fit of records.
   *
   * @param assurance chance wanted, above 0 and at most {@value #SUREST_BY_RECORDS}
   * @return 400 or more
   * @throws IllegalArgumentException if the chance is outside its range
   */
  public static int byRecords(double assurance) {
    return seasons(assurance, SUREST_BY_RECORDS, SHORT_DRAWN, LEAST_DRAWN);
  }

  /**
   * Seasons of stated takes.
   *
   * @param assurance chance wanted, above 0 and at most {@value #SUREST_STATED}
   * @return 1,000 or more
   * @throws IllegalArgumentException if the chance is outside its range
   */
  public static int stated(double assurance) {
    return seasons(assurance, SUREST_STATED, SHORT_SPREAD, LEAST_SPREAD);
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

  private static int seasons(double assurance, double surest, int tooBad, int least) {
    if (!(assurance > 0 && tellable(assurance, surest))) {
      throw new IllegalArgumentException(
          "how sure to be must be above 0 and at most %s, got %s: rarer seasons can't be told"
              .formatted(surest, assurance));
    }
    return Math.max(least, (int) Math.round(tooBad / (1 - assurance)));
  }
}
