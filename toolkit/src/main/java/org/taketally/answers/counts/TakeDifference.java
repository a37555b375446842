package org.taketally.answers.counts;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.taketally.terms.Interval;

/**
 * Intervals for the difference of two take rates, first minus second, in separate lots of grafts.
 * Pages show Newcombe's; docs/intervals.md says why.
 *
 * <pre>
 *   p1, p2   the two counted takes          n1, n2   their grafts
 *   d        p1 - p2                        l, u     Wilson limits of each
 *   z        normal quantile of the coverage, two-sided
 * </pre>
 */
public final class TakeDifference {

  private static final double RELATIVE_ACCURACY = 1e-14;
  private static final double ABSOLUTE_ACCURACY = 1e-15;
  private static final int MOST_STEPS = 1000;
  private static final double LARGE = 1e9;

  private TakeDifference() {}

  /**
   * Newcombe's hybrid score interval (his method 10): the Wilson limits of both rates, squared and
   * added.
   *
   * @param first takes of the first lot, at least one graft
   * @param second takes of the second lot, at least one graft
   * @param coverage coverage, strictly between 0 and 1, e.g. 0.95
   * @return limits for first minus second, within [-1, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a
   *     href="https://doi.org/10.1002/(SICI)1097-0258(19980430)17:8%3C873::AID-SIM779%3E3.0.CO;2-I">Newcombe
   *     (1998b)</a>
   */
  public static Interval newcombe(TakeCount first, TakeCount second, double coverage) {
    Interval one = TakeRateInterval.wilson(first.takes(), first.grafts(), coverage);
    Interval two = TakeRateInterval.wilson(second.takes(), second.grafts(), coverage);
    double p1 = first.rate();
    double p2 = second.rate();
    double d = p1 - p2;
    double low = d - Math.hypot(p1 - one.low(), two.high() - p2);
    double high = d + Math.hypot(one.high() - p1, p2 - two.low());
    return new Interval(low, high, coverage);
  }

  /**
   * Agresti-Caffo interval: the textbook formula after adding one take and one failure to each lot.
   *
   * @param first takes of the first lot, at least one graft
   * @param second takes of the second lot, at least one graft
   * @param coverage coverage, strictly between 0 and 1
   * @return limits for first minus second, cut to [-1, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a href="https://doi.org/10.1080/00031305.2000.10474560">Agresti and Caffo (2000)</a>
   */
  public static Interval agrestiCaffo(TakeCount first, TakeCount second, double coverage) {
    Interval interval = wald(withOneOfEach(first), withOneOfEach(second), coverage);
    return new Interval(Math.max(-1, interval.low()), Math.min(1, interval.high()), coverage);
  }

  private static TakeCount withOneOfEach(TakeCount count) {
    return new TakeCount(count.assessed().takes() + 1, count.grafts() + 2);
  }

  /**
   * The textbook interval. Covers too rarely for small counts or rates near 0 or 1; kept for checks
   * by hand.
   *
   * @param first takes of the first lot, at least one graft
   * @param second takes of the second lot, at least one graft
   * @param coverage coverage, strictly between 0 and 1
   * @return limits for first minus second, not cut to [-1, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static Interval wald(TakeCount first, TakeCount second, double coverage) {
    double d = first.assessed().rate() - second.assessed().rate();
    double half =
        Quantiles.twoSided(coverage) * Math.hypot(first.standardError(), second.standardError());
    return new Interval(d - half, d + half, coverage);
  }

  /**
   * Mee's score interval: all differences that a score test, with the two rates fitted under that
   * difference, does not reject.
   *
   * @param first takes of the first lot, at least one graft
   * @param second takes of the second lot, at least one graft
   * @param coverage coverage, strictly between 0 and 1
   * @return limits for first minus second, within [-1, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see "Mee (1984), Biometrics 40, 1175-1176"
   */
  public static Interval mee(TakeCount first, TakeCount second, double coverage) {
    DifferenceScore score = new DifferenceScore(first, second);
    return invert(score, delta -> score.at(delta), coverage);
  }

  /**
   * Miettinen and Nurminen's score interval: Mee's with the variance scaled by N / (N - 1).
   *
   * @param first takes of the first lot, at least one graft
   * @param second takes of the second lot, at least one graft
   * @param coverage coverage, strictly between 0 and 1
   * @return limits for first minus second, within [-1, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see <a href="https://doi.org/10.1002/sim.4780040211">Miettinen and Nurminen (1985)</a>
   */
  public static Interval miettinenNurminen(TakeCount first, TakeCount second, double coverage) {
    DifferenceScore score = new DifferenceScore(first, second);
    return invert(score, delta -> score.scaledAt(delta), coverage);
  }

  /**
   * Gart and Nam's score interval corrected for skewness, best balanced of all between the two
   * tails.
   *
   * @param first takes of the first lot, at least one graft
   * @param second takes of the second lot, at least one graft
   * @param coverage coverage, strictly between 0 and 1
   * @return limits for first minus second, within [-1, 1]
   * @throws IllegalArgumentException if an argument is outside its range
   * @see "Gart and Nam (1990), Biometrics 46, 637-643"
   */
  public static Interval skewnessCorrected(TakeCount first, TakeCount second, double coverage) {
    DifferenceScore score = new DifferenceScore(first, second);
    return invert(score, delta -> score.skewnessCorrectedAt(delta), coverage);
  }

  /** The differences at which a score, falling in the difference, crosses z and -z. */
  private static Interval invert(
      DifferenceScore score, DoubleUnaryOperator statistic, double coverage) {
    double z = Quantiles.twoSided(coverage);
    double d = score.difference();
    double low = crossing(delta -> statistic.applyAsDouble(delta) - z, -1, d, -1);
    double high = crossing(delta -> statistic.applyAsDouble(delta) + z, d, 1, 1);
    return new Interval(Math.min(low, d), Math.max(high, d), coverage);
  }

  /** Where the statistic is zero, or the end of the scale if it isn't before that. */
  private static double crossing(
      DoubleUnaryOperator statistic, double from, double to, double end) {
    double atFrom = statistic.applyAsDouble(from);
    double atTo = statistic.applyAsDouble(to);
    if (!(atFrom > 0 && atTo < 0)) {
      return end;
    }
    return new BrentSolver(RELATIVE_ACCURACY, ABSOLUTE_ACCURACY)
        .solve(MOST_STEPS, delta -> finite(statistic.applyAsDouble(delta)), from, to);
  }

  /** At the ends of the scale the variance is zero and the score infinite. */
  private static double finite(double score) {
    return Math.max(-LARGE, Math.min(LARGE, score));
  }
}
