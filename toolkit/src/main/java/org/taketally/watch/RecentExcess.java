package org.taketally.watch;

import java.util.ArrayList;
import java.util.List;
import org.taketally.watch.chart.NormalEwma;

/**
 * How many more grafts fail lately than expected: an exponentially weighted moving average, which
 * shows how things stand now where the CUSUM shows what has gathered. It raises no alarm of its
 * own, so that false alarms stay as many as stated.
 *
 * <pre>
 *   w       weight of the newest lot, {@value #WEIGHT}
 *   D, N    D = (1 - w) D + w (failures - n q)      N = (1 - w) N + w n      excess = D / N
 *   V       V = (1 - w)^2 V + w^2 n p q (1 + (n - 1) rho)      limit = c sqrt(V) / N
 *   c       such that a standardised average with w stays within it for the run length of the
 *           chart, by its integral equation ({@link NormalEwma})
 * </pre>
 *
 * @param excess share of grafts failing beyond those expected, -1 to 1
 * @param limit beyond which it is more than chance gives, above 0
 * @see "Roberts (1959), Technometrics 1, 239-250"
 */
public record RecentExcess(double excess, double limit) {

  private static final double WEIGHT = 0.2;
  private static final double LEAST = 0.5;
  private static final double MOST = 5;
  private static final int HALVINGS = 24;

  static List<RecentExcess> of(
      List<WatchedLot> lots, List<LotExpectation> expected, double runLength) {
    double c = limit(runLength);
    List<RecentExcess> all = new ArrayList<>();
    double excess = 0;
    double grafts = 0;
    double variance = 0;
    for (int i = 0; i < lots.size(); i++) {
      double n = lots.get(i).grafts();
      double p = expected.get(i).mean();
      double own = n * p * (1 - p) * (1 + (n - 1) * expected.get(i).correlation());
      excess = (1 - WEIGHT) * excess + WEIGHT * (lots.get(i).failures() - n * (1 - p));
      grafts = (1 - WEIGHT) * grafts + WEIGHT * n;
      variance = (1 - WEIGHT) * (1 - WEIGHT) * variance + WEIGHT * WEIGHT * own;
      all.add(new RecentExcess(excess / grafts, c * Math.sqrt(variance) / grafts));
    }
    return all;
  }

  private static double limit(double runLength) {
    double low = LEAST;
    double high = MOST;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (new NormalEwma(WEIGHT, middle).averageRunLength(0) < runLength) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /**
   * Whether more fail lately than chance gives.
   *
   * @return true beyond the limit
   */
  public boolean beyond() {
    return excess > limit;
  }
}
