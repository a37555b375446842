package org.taketally.plan.size;

import java.util.HashMap;
import java.util.Map;
import java.util.function.IntPredicate;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.terms.Logit;

/**
 * Power where stocks are compared by few takes or few failures, which the normal approximation
 * misstates: the chance of every pair of counts, summed over those that show the claim.
 *
 * <pre>
 *   y, n    takes and grafts of a stock          z   upper alpha point
 *   equivalent:   |a - a'| + z e &lt; margin        a = (y + 1) / (n + 2)
 *                 e^2 = a (1 - a) / (n + 2), summed over the two stocks
 *   differs:      |b - b'| &gt; z f, alpha halved   b, f^2   mean and variance (summed) of the take
 *                 whose logit is normal about that of y / n with variance n / (y (n - y)), as the
 *                 verdict's model has it; none and all count as one and all but one
 * </pre>
 *
 * <p>One take and one failure are added to each stock because counts of none or all have no spread
 * otherwise; ranges then cover as often as they say down to ten grafts. Either agrees with verdicts
 * on trials made up (docs/planning.md).
 *
 * @see "Agresti and Caffo (2000), The American Statistician 54, 280-288"
 */
final class FewGraftsPower {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  /** Counts so many standard deviations off, and this many more, have no chance to speak of. */
  private static final double REACH = 7;

  private static final int BEYOND = 10;

  /** Takes, or failures, from which on a take's mean and variance are those of the counts. */
  private static final int MANY = 200;

  private static final double ROOT_PI = Math.sqrt(Math.PI);
  private static final GaussIntegrator OVER_LOGITS = new GaussIntegratorFactory().hermite(24);

  private final Lot fewer;
  private final Lot more;

  /**
   * Grafts of a stock.
   *
   * @param grafts 1 or more
   * @param take true take, above 0 and below 1
   */
  record Lot(int grafts, double take) {

    private BinomialDistribution takes() {
      return BinomialDistribution.of(grafts, take);
    }

    private int from() {
      return (int) Math.max(0, Math.floor(grafts * take - reach()));
    }

    private int to() {
      return (int) Math.min(grafts, Math.ceil(grafts * take + reach()));
    }

    /** Counts that have a chance to speak of. */
    private int counts() {
      return to() - from();
    }

    private double reach() {
      return REACH * Math.sqrt((double) grafts * take * (1 - take)) + BEYOND;
    }

    private double share(int takes) {
      return (takes + 1.0) / (grafts + 2.0);
    }

    private double variance(int takes) {
      return share(takes) * (1 - share(takes)) / (grafts + 2.0);
    }

    /** The likely count whose share is nearest to one of the other stock. */
    private int nearest(double share) {
      return (int) Math.max(from(), Math.min(to(), Math.round(share * (grafts + 2.0) - 1)));
    }

    /** The take as the model has it after so many takes. */
    private Moments modelled(int takes) {
      double y = Math.max(1, Math.min(grafts - 1, takes));
      double p = y / grafts;
      if (grafts < 2 || Math.min(y, grafts - y) > MANY) {
        return new Moments(p, p * (1 - p) / grafts);
      }
      double logit = Logit.of(p);
      double scale = Math.sqrt(2 / (grafts * p * (1 - p)));
      double mean = OVER_LOGITS.integrate(x -> Logit.take(logit + scale * x)) / ROOT_PI;
      double variance =
          OVER_LOGITS.integrate(
                  x -> {
                    double away = Logit.take(logit + scale * x) - mean;
                    return away * away;
                  })
              / ROOT_PI;
      return new Moments(mean, variance);
    }
  }

  private record Moments(double mean, double variance) {

    private boolean isWithin(Moments other, double errors) {
      return Math.abs(mean - other.mean) <= errors * Math.sqrt(variance + other.variance);
    }
  }

  /** Two stocks. */
  FewGraftsPower(Lot one, Lot other) {
    this.fewer = one.counts() <= other.counts() ? one : other;
    this.more = one.counts() <= other.counts() ? other : one;
  }

  /** Chance that they are found to differ, in either direction; {@code alpha} is of both sides. */
  double differs(double alpha) {
    double z = NORMAL.inverseSurvivalProbability(alpha / 2);
    Map<Integer, Moments> ys = new HashMap<>();
    Map<Integer, Moments> ws = new HashMap<>();
    return 1
        - near(
            (y, w) ->
                ys.computeIfAbsent(y, fewer::modelled)
                    .isWithin(ws.computeIfAbsent(w, more::modelled), z));
  }

  /** Chance that they are shown to differ by less; {@code alpha} is of either one-sided test. */
  double equivalent(double margin, double alpha) {
    double z = NORMAL.inverseSurvivalProbability(alpha);
    return near((y, w) -> gap(y, w) + z * error(y, w) < margin);
  }

  private double gap(int y, int w) {
    return Math.abs(fewer.share(y) - more.share(w));
  }

  private double error(int y, int w) {
    return Math.sqrt(fewer.variance(y) + more.variance(w));
  }

  /** Whether takes of the stock with fewer likely counts and of the other lie near together. */
  private interface Near {
    boolean holds(int y, int w);
  }

  private double near(Near near) {
    BinomialDistribution ys = fewer.takes();
    BinomialDistribution ws = more.takes();
    double chance = 0;
    for (int y = fewer.from(); y <= fewer.to(); y++) {
      int takes = y;
      int middle = more.nearest(fewer.share(y));
      if (near.holds(y, middle)) {
        int low = last(middle, more.from(), w -> near.holds(takes, w));
        int high = last(middle, more.to(), w -> near.holds(takes, w));
        chance += ys.probability(y) * ws.probability(low - 1, high);
      }
    }
    return Math.min(1, chance);
  }

  /** The last from one that holds to another, all between holding up to it. */
  private static int last(int holds, int end, IntPredicate holding) {
    if (holding.test(end)) {
      return end;
    }
    int in = holds;
    int out = end;
    while (Math.abs(out - in) > 1) {
      int middle = in + (out - in) / 2;
      if (holding.test(middle)) {
        in = middle;
      } else {
        out = middle;
      }
    }
    return in;
  }
}
