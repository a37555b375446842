package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * When grafts are lost, if the danger rises or falls steadily with time: Weibull times of one shape
 * for all lots, each with a scale of its own, grafts still alive counted as such.
 *
 * <pre>
 *   t, d    days watched and 1 if lost, of each graft       D_g, D  losses of lot g and of all
 *   S_g(k) = sum of t^k over lot g, less f^k of grafts watched only from day f on
 *   scale_g^k = S_g(k) / D_g                                the best scales for a shape k
 *   D / k + sum of d log t - sum over g of D_g S_g'(k) / S_g(k) = 0    has one root, the best k
 * </pre>
 *
 * <p>For days of loss that are known; where grafts were looked at only now and then, {@link
 * HazardRegression} takes the gaps between looks into account.
 *
 * @param shape above 1: the danger rises with time; below 1: it is worst at first; 1: as {@link
 *     LossRate}
 * @param lots each lot's scale
 * @see "Kalbfleisch and Prentice (2002), The Statistical Analysis of Failure Time Data, chapter 3"
 */
public record LossTimes(double shape, List<Lot> lots) {

  private static final double LEAST_SHAPE = 1e-3;
  private static final double MOST_SHAPE = 1e3;
  private static final double ACCURACY = 1e-12;
  private static final int MOST_STEPS = 1000;

  /**
   * One lot.
   *
   * @param name as given
   * @param lost grafts found lost, at least 1
   * @param scaleDays days by which 63 % are lost
   */
  public record Lot(String name, long lost, double scaleDays) {}

  public LossTimes {
    lots = List.copyOf(lots);
  }

  /** Sums of one lot: losses, the log days of the lost, and the grafts by days over the longest. */
  private record Sums(String name, long lost, double logDays, List<FollowUp> grafts) {

    /** {@code S}, or its slope in the shape. */
    double powers(double shape, double longest, boolean slope) {
      double sum = 0;
      for (FollowUp graft : grafts) {
        sum += graft.grafts() * power(graft.days(), shape, longest, slope);
        sum -= graft.grafts() * power(graft.from(), shape, longest, slope);
      }
      return sum;
    }

    private static double power(double days, double shape, double longest, boolean slope) {
      if (days == 0) {
        return 0;
      }
      double log = Math.log(days / longest);
      return Math.exp(shape * log) * (slope ? log : 1);
    }
  }

  /**
   * The best shape and scales.
   *
   * @param lots watched for more than 0 days each graft; lots of one name count as one, strata are
   *     not looked at
   * @return shape and scales
   * @throws IllegalArgumentException if a graft was watched for 0 days
   * @throws ArithmeticException if a lot has no loss, or all losses came on one day as long as any
   *     graft was watched, so that no shape is best
   */
  public static LossTimes of(List<Watched> lots) {
    List<Sums> sums = RiskSet.names(lots).stream().map(name -> sums(name, lots)).toList();
    double longest =
        sums.stream()
            .flatMap(lot -> lot.grafts.stream())
            .mapToDouble(FollowUp::days)
            .max()
            .orElse(1);
    double shape = shape(sums, longest);
    List<Lot> found = new ArrayList<>();
    for (Sums lot : sums) {
      double mean = lot.powers(shape, longest, false) / lot.lost;
      found.add(new Lot(lot.name, lot.lost, longest * Math.pow(mean, 1 / shape)));
    }
    return new LossTimes(shape, found);
  }

  private static Sums sums(String name, List<Watched> lots) {
    List<FollowUp> grafts =
        lots.stream()
            .filter(lot -> lot.name().equals(name))
            .flatMap(lot -> lot.grafts().stream())
            .toList();
    if (grafts.stream().anyMatch(graft -> graft.days() <= 0)) {
      throw new IllegalArgumentException(
          "times of loss need more than 0 days of watching for each graft of " + name);
    }
    List<FollowUp> lost = grafts.stream().filter(FollowUp::lost).toList();
    if (lost.isEmpty()) {
      throw new ArithmeticException("no times of loss: none of %s was lost".formatted(name));
    }
    return new Sums(
        name,
        lost.stream().mapToLong(FollowUp::grafts).sum(),
        lost.stream().mapToDouble(graft -> graft.grafts() * Math.log(graft.days())).sum(),
        grafts);
  }

  private static double shape(List<Sums> sums, double longest) {
    if (slope(sums, longest, MOST_SHAPE) >= 0) {
      throw new ArithmeticException(
          "no times of loss: all were lost after as many days, so the danger has no shape");
    }
    return new BrentSolver(ACCURACY, ACCURACY)
        .solve(MOST_STEPS, k -> slope(sums, longest, k), LEAST_SHAPE, MOST_SHAPE);
  }

  private static double slope(List<Sums> sums, double longest, double shape) {
    double slope = 0;
    for (Sums lot : sums) {
      double mean = lot.powers(shape, longest, true) / lot.powers(shape, longest, false);
      slope += lot.lost * (1 / shape - mean - Math.log(longest)) + lot.logDays;
    }
    return slope;
  }
}
