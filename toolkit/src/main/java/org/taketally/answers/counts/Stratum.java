package org.taketally.answers.counts;

/**
 * Two lots of grafts compared within one stratum, e.g. two rootstocks within one cultivar.
 *
 * <pre>
 *             took   failed
 *   first      a       b       n1
 *   second     c       d       n2
 *              m1      m2      n
 * </pre>
 *
 * @param name what the stratum is, e.g. the cultivar
 * @param first takes of the first lot; may have no grafts
 * @param second takes of the second lot; may have no grafts
 */
public record Stratum(String name, TakeCount first, TakeCount second) {

  /**
   * All grafts.
   *
   * @return n
   */
  public long grafts() {
    return first.grafts() + second.grafts();
  }

  /**
   * All takes.
   *
   * @return m1
   */
  public long takes() {
    return first.takes() + second.takes();
  }

  /**
   * Whether both lots were grafted here at all.
   *
   * @return true if a difference can be counted
   */
  public boolean hasBoth() {
    return first.grafts() > 0 && second.grafts() > 0;
  }

  /**
   * Whether the stratum says anything about the odds ratio: both lots are here, and neither did all
   * grafts take nor all fail.
   *
   * @return true if so
   */
  public boolean isInformative() {
    return hasBoth() && takes() > 0 && takes() < grafts();
  }

  /**
   * Odds of taking in the first lot against the second.
   *
   * @return a d / (b c); 0 or infinite if a count is 0, NaN if the ratio can't be told
   */
  public double oddsRatio() {
    return (double) first.takes()
        * second.failures()
        / ((double) first.failures() * second.takes());
  }

  /** Mean of a, given the margins, if the lots don't differ. */
  double expectedTakes() {
    return (double) takes() * first.grafts() / grafts();
  }

  /** Variance of a, given the margins, if the lots don't differ; needs two grafts. */
  double varianceOfTakes() {
    double n = grafts();
    return (double) takes() / n * (n - takes()) / n * first.grafts() * second.grafts() / (n - 1);
  }

  /**
   * The a that makes the odds ratio of the table {@code ratio}, margins kept: the root within range
   * of ratio (m1 - a)(n1 - a) = a (n2 - m1 + a).
   */
  double takesAtOddsRatio(double ratio) {
    double m1 = takes();
    double n1 = first.grafts();
    double n2 = second.grafts();
    double square = 1 - ratio;
    double linear = n2 - m1 + ratio * (m1 + n1);
    double constant = -ratio * m1 * n1;
    // the form of the root that loses no digits when the ratio is near 1
    return -2 * constant / (linear + Math.sqrt(linear * linear - 4 * square * constant));
  }

  /** Large-sample variance of a about {@code expected}. */
  double varianceAbout(double expected) {
    double m1 = takes();
    double n1 = first.grafts();
    double n2 = second.grafts();
    return 1
        / (1 / expected + 1 / (m1 - expected) + 1 / (n1 - expected) + 1 / (n2 - m1 + expected));
  }
}
