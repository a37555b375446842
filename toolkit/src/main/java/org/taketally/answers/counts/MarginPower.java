package org.taketally.answers.counts;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How likely two equal lots of grafts are to show that a take is not worse, better, or much the
 * same by a margin, and how many grafts that needs.
 *
 * <pre>
 *   d = p1 - p2      s^2 = (p1 (1 - p1) + p2 (1 - p2)) / n      z upper alpha point
 *   not worse:  {@code P(d^ > -margin + z s)}    better:  {@code P(d^ > margin + z s)}
 *   much the same:  {@code P(-margin + z s < d^ < margin - z s)}
 * </pre>
 *
 * <p>Grafts are taken as independent: for grafts in batches multiply by the design effect.
 *
 * @param question what is to be shown of the first lot against the second
 * @param margin difference in take that would change what you do, above 0 and below 1
 * @param alpha chance of error allowed, above 0 and below 0.5, e.g. 0.05
 * @see "Chow, Shao and Wang (2008), Sample Size Calculations in Clinical Research, section 4.2"
 */
public record MarginPower(Question question, double margin, double alpha) {

  private static final double MOST_GRAFTS = 1e12;
  private static final double ACCURACY = 1e-10;
  private static final int MOST_STEPS = 1000;

  /** What is to be shown. */
  public enum Question {
    /** The first lot takes worse than the second by less than the margin. */
    NOT_WORSE,
    /** The first lot takes better than the second by more than the margin. */
    BETTER,
    /** The lots differ by less than the margin. */
    MUCH_THE_SAME
  }

  public MarginPower {
    if (!(margin > 0 && margin < 1)) {
      throw new IllegalArgumentException(
          "the margin must lie between 0 and 1, e.g. 0.1 for 10 points, got " + margin);
    }
    Equivalence.requireAlpha(alpha);
  }

  /**
   * How likely it is to be shown.
   *
   * @param firstTake true take of the first lot, above 0 and below 1
   * @param secondTake true take of the second lot, above 0 and below 1
   * @param grafts grafts per lot, above 0; need not be whole
   * @return chance, 0 to 1
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public double power(double firstTake, double secondTake, double grafts) {
    DifferencePower.requireTake(firstTake);
    DifferencePower.requireTake(secondTake);
    double d = firstTake - secondTake;
    double s = Math.sqrt((firstTake * (1 - firstTake) + secondTake * (1 - secondTake)) / grafts);
    double z = Quantiles.upper(alpha);
    double aboveLow = Quantiles.below((d + margin) / s - z);
    return switch (question) {
      case NOT_WORSE -> aboveLow;
      case BETTER -> Quantiles.below((d - margin) / s - z);
      case MUCH_THE_SAME -> Math.max(0, aboveLow - Quantiles.above((margin - d) / s - z));
    };
  }

  /**
   * Grafts per lot that make it as likely to be shown as wanted.
   *
   * @param firstTake true take of the first lot, above 0 and below 1
   * @param secondTake true take of the second lot, above 0 and below 1
   * @param power chance wanted, above {@code alpha} and below 1, e.g. 0.8
   * @return grafts, not rounded; round up
   * @throws IllegalArgumentException if an argument is outside its range, or what is to be shown is
   *     not true of these takes
   */
  public double grafts(double firstTake, double secondTake, double power) {
    if (!(power > alpha && power < 1)) {
      throw new IllegalArgumentException(
          "the power wanted must lie between alpha (%s) and 1, e.g. 0.8, got %s"
              .formatted(alpha, power));
    }
    if (!isTrueOf(firstTake - secondTake)) {
      throw new IllegalArgumentException(
          "no number of grafts shows %s by a margin of %s when the true takes are %s and %s"
              .formatted(
                  question.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '),
                  margin,
                  firstTake,
                  secondTake));
    }
    return new BrentSolver(ACCURACY, ACCURACY)
        .solve(MOST_STEPS, n -> power(firstTake, secondTake, n) - power, 1e-3, MOST_GRAFTS);
  }

  private boolean isTrueOf(double difference) {
    return switch (question) {
      case NOT_WORSE -> difference > -margin;
      case BETTER -> difference > margin;
      case MUCH_THE_SAME -> Math.abs(difference) < margin;
    };
  }
}
