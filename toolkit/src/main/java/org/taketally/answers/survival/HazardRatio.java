package org.taketally.answers.survival;

import java.util.List;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.taketally.answers.counts.ChiSquare;
import org.taketally.answers.counts.Quantiles;
import org.taketally.terms.Interval;

/**
 * How many times as fast one lot is lost as another, whatever the days are like for both: Cox's
 * partial likelihood for two lots, within strata if there are any.
 *
 * <pre>
 *   n1, n2, d1, d2   grafts at risk and lost on a day    d = d1 + d2    b  log hazard ratio
 *   Breslow:  d1 b - d log(n1 e^b + n2)
 *   Efron:    d1 b - sum_(l &lt; d) log((n1 - l d1/d) e^b + n2 - l d2/d)
 *   discrete: d1 b - log sum_k C(n1, k) C(n2, d - k) e^(k b)
 * </pre>
 *
 * @param logRatio log hazard ratio, first against second
 * @param standardError its standard error
 * @param likelihoodRatio 2 (log L at the estimate - log L at no difference)
 * @param score the score test of no difference
 * @param wald the estimate over its standard error, squared
 * @see "Cox (1972), Journal of the Royal Statistical Society B 34, 187-220"
 */
public record HazardRatio(
    double logRatio,
    double standardError,
    ChiSquare likelihoodRatio,
    ChiSquare score,
    ChiSquare wald) {

  private static final int MOST_STEPS = 100;
  private static final double CLOSE_ENOUGH = 1e-12;

  /** How grafts lost on one day are taken. */
  public enum Ties {
    /** Breslow's approximation, good for few on a day. */
    BRESLOW,
    /** Efron's approximation, close to the exact average over orders. */
    EFRON,
    /** As truly lost at one time: each graft has its odds that day. */
    DISCRETE
  }

  /** Log likelihood, its slope, and minus its curvature. */
  record Point(double value, double slope, double information) {
    Point plus(Point other) {
      return new Point(value + other.value, slope + other.slope, information + other.information);
    }
  }

  /**
   * Two lots.
   *
   * @param lots of two names, first named against second
   * @param ties how grafts lost on one day are taken
   * @return the ratio on the log scale, and tests of no difference
   * @throws IllegalArgumentException if there are not two names
   * @throws ArithmeticException if one lot had no losses, or all of them, while both were watched,
   *     so that the ratio is 0 or infinite
   */
  public static HazardRatio of(List<Watched> lots, Ties ties) {
    List<RiskSet> sets = compared(lots);
    List<String> names = RiskSet.names(lots);
    long first = sets.stream().mapToLong(set -> set.lost()[0]).sum();
    long second = sets.stream().mapToLong(set -> set.lost()[1]).sum();
    if (first == 0 || second == 0) {
      throw new ArithmeticException(
          "no hazard ratio: while both were watched, %d of %s and %d of %s were lost"
              .formatted(first, names.get(0), second, names.get(1)));
    }
    double b = estimate(sets, ties);
    Point none = sum(sets, ties, 0);
    Point best = sum(sets, ties, b);
    return new HazardRatio(
        b,
        1 / Math.sqrt(best.information),
        new ChiSquare(Math.max(0, 2 * (best.value - none.value)), 1),
        new ChiSquare(none.slope * none.slope / none.information, 1),
        new ChiSquare(b * b * best.information, 1));
  }

  /** Days with losses on which both lots were watched. */
  static List<RiskSet> compared(List<Watched> lots) {
    List<String> names = RiskSet.names(lots);
    if (names.size() != 2) {
      throw new IllegalArgumentException("a hazard ratio needs two lots, got %s".formatted(names));
    }
    return RiskSet.of(lots).stream()
        .filter(set -> set.atRisk()[0] > 0 && set.atRisk()[1] > 0)
        .toList();
  }

  /** Newton steps, halved until the likelihood rises. */
  private static double estimate(List<RiskSet> sets, Ties ties) {
    double b = 0;
    Point here = sum(sets, ties, b);
    for (int step = 0; step < MOST_STEPS; step++) {
      double change = here.slope / here.information;
      Point there = sum(sets, ties, b + change);
      while (there.value < here.value && Math.abs(change) > CLOSE_ENOUGH) {
        change /= 2;
        there = sum(sets, ties, b + change);
      }
      b += change;
      here = there;
      if (Math.abs(change) <= CLOSE_ENOUGH * Math.max(1, Math.abs(b))) {
        return b;
      }
    }
    throw new ArithmeticException(
        "the hazard ratio did not settle in %d steps".formatted(MOST_STEPS));
  }

  /** The log partial likelihood at a log ratio b. */
  static Point sum(List<RiskSet> sets, Ties ties, double b) {
    return sets.stream()
        .map(
            set ->
                switch (ties) {
                  case BRESLOW -> breslow(set, b);
                  case EFRON -> efron(set, b);
                  case DISCRETE -> discrete(set, b);
                })
        .reduce(new Point(0, 0, 0), Point::plus);
  }

  private static Point breslow(RiskSet set, double b) {
    long d1 = set.lost()[0];
    long d = set.lostTotal();
    double first = set.atRisk()[0] * Math.exp(b);
    double total = first + set.atRisk()[1];
    double p = first / total;
    return new Point(d1 * b - d * Math.log(total), d1 - d * p, d * p * (1 - p));
  }

  /** Each loss of a day lessens the grafts at risk for the next. */
  private static Point efron(RiskSet set, double b) {
    long d1 = set.lost()[0];
    long d = set.lostTotal();
    Point point = new Point(d1 * b, d1, 0);
    for (long l = 0; l < d; l++) {
      double share = (double) l / d;
      double first = (set.atRisk()[0] - share * d1) * Math.exp(b);
      double total = first + set.atRisk()[1] - share * (d - d1);
      double p = first / total;
      point = point.plus(new Point(-Math.log(total), -p, p * (1 - p)));
    }
    return point;
  }

  private static Point discrete(RiskSet set, double b) {
    int n1 = Math.toIntExact(set.atRisk()[0]);
    int n2 = Math.toIntExact(set.atRisk()[1]);
    int d = Math.toIntExact(set.lostTotal());
    int least = Math.max(0, d - n2);
    int most = Math.min(d, n1);
    double[] logs = new double[most - least + 1];
    double largest = Double.NEGATIVE_INFINITY;
    for (int k = least; k <= most; k++) {
      logs[k - least] =
          CombinatoricsUtils.factorialLog(n1)
              - CombinatoricsUtils.factorialLog(k)
              - CombinatoricsUtils.factorialLog(n1 - k)
              + CombinatoricsUtils.factorialLog(n2)
              - CombinatoricsUtils.factorialLog(d - k)
              - CombinatoricsUtils.factorialLog(n2 - d + k)
              + k * b;
      largest = Math.max(largest, logs[k - least]);
    }
    double total = 0;
    double mean = 0;
    double square = 0;
    for (int k = least; k <= most; k++) {
      double weight = Math.exp(logs[k - least] - largest);
      total += weight;
      mean += weight * k;
      square += weight * k * k;
    }
    mean /= total;
    return new Point(
        set.lost()[0] * b - largest - Math.log(total),
        set.lost()[0] - mean,
        square / total - mean * mean);
  }

  /**
   * The hazard ratio itself.
   *
   * @return above 0; 1 means lost alike
   */
  public double ratio() {
    return Math.exp(logRatio);
  }

  /**
   * Its likely range.
   *
   * @param coverage coverage, strictly between 0 and 1, e.g. 0.95
   * @return limits of the ratio, symmetric on the log scale
   */
  public Interval interval(double coverage) {
    double half = Quantiles.twoSided(coverage) * standardError;
    return new Interval(Math.exp(logRatio - half), Math.exp(logRatio + half), coverage);
  }
}
