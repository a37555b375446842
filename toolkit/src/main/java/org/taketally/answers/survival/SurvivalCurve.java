package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.taketally.answers.counts.Quantiles;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.terms.Interval;

/**
 * Share of takes still alive, day by day: the estimate of Kaplan and Meier, which uses grafts no
 * longer looked at for as long as they were.
 *
 * <pre>
 *   n, d   grafts at risk and lost at a day      S = product (1 - d/n)
 *   v      sum d / (n (n - d))                    Greenwood: standard error of S = S sqrt(v)
 *   u_i    sum (d_i - n_i d/n) / (n - d)           what row i of several grafts adds to log S
 *   v      at least R / (R - 1) sum u_i^2          with R rows whose grafts may die together
 *   limits on the log-log scale: S^exp(-+ z sqrt(v) / log S)
 * </pre>
 *
 * @see <a href="https://doi.org/10.1080/01621459.1958.10501452">Kaplan and Meier (1958)</a>
 * @see "Kalbfleisch and Prentice (1980), The Statistical Analysis of Failure Time Data, section
 *     1.3"
 * @see "Williams (1995), Biometrics 51, 1450-1456: rows whose grafts share their fate"
 */
public final class SurvivalCurve {

  private final List<Step> steps;
  private final List<FollowUp> grafts;
  private final double coverage;

  /**
   * A day on which grafts were found lost, or the state on any day.
   *
   * @param days days from the take
   * @param atRisk grafts alive and looked at up to that day
   * @param lost grafts found lost that day
   * @param alive estimated share still alive after that day, 0 to 1
   * @param standardError of that share, Greenwood's or, of rows, by how they differ if that is
   *     larger; NaN once none is left
   * @param interval likely range of that share, on the log-log scale; where that says nothing,
   *     because none was lost, Wilson's for the grafts at risk; where all are lost, from 0 to the
   *     upper limit of the step before
   */
  public record Step(
      double days, long atRisk, long lost, double alive, double standardError, Interval interval) {}

  private SurvivalCurve(List<Step> steps, List<FollowUp> grafts, double coverage) {
    this.steps = List.copyOf(steps);
    this.grafts = List.copyOf(grafts);
    this.coverage = coverage;
  }

  /**
   * The curve of some grafts. Those found lost on a day count as at risk that day, and so do those
   * last seen alive that day.
   *
   * @param grafts at least one
   * @param coverage coverage of each interval, strictly between 0 and 1, e.g. 0.95
   * @return the curve
   * @throws IllegalArgumentException if there are no grafts or the coverage is out of range
   */
  public static SurvivalCurve of(List<FollowUp> grafts, double coverage) {
    return of(grafts, List.of(), coverage);
  }

  /**
   * The curve of grafts in rows, each of which may die together: its ranges are at least as wide as
   * rows differ.
   *
   * @param rows grafts of each row; at least one graft
   * @param coverage coverage of each interval, strictly between 0 and 1, e.g. 0.95
   * @return the curve
   * @throws IllegalArgumentException if there are no grafts or the coverage is out of range
   */
  public static SurvivalCurve ofRows(List<List<FollowUp>> rows, double coverage) {
    return of(rows.stream().flatMap(List::stream).toList(), rows, coverage);
  }

  private static SurvivalCurve of(
      List<FollowUp> grafts, List<List<FollowUp>> rows, double coverage) {
    double z = Quantiles.twoSided(coverage);
    RowLosses sharedFate = new RowLosses(rows);
    if (grafts.isEmpty()) {
      throw new IllegalArgumentException("a survival curve needs at least one graft that took");
    }
    TreeMap<Double, Long> losses = new TreeMap<>();
    grafts.stream()
        .filter(FollowUp::lost)
        .forEach(graft -> losses.merge(graft.days(), graft.grafts(), Long::sum));
    List<Step> steps = new ArrayList<>();
    double alive = 1;
    double greenwood = 0;
    for (double days : losses.keySet()) {
      long n = atRisk(grafts, days);
      long d = losses.get(days);
      alive *= (double) (n - d) / n;
      greenwood += (double) d / ((double) n * (n - d));
      double variance = Math.max(greenwood, sharedFate.variance(days, n, d));
      Interval interval = limits(alive, z * Math.sqrt(variance), coverage, steps, n);
      double error = alive > 0 ? alive * Math.sqrt(variance) : Double.NaN;
      steps.add(new Step(days, n, d, alive, error, interval));
    }
    return new SurvivalCurve(steps, grafts, coverage);
  }

  private static long atRisk(List<FollowUp> grafts, double days) {
    return grafts.stream().filter(g -> g.atRisk(days)).mapToLong(FollowUp::grafts).sum();
  }

  private static Interval limits(
      double alive, double half, double coverage, List<Step> before, long atRisk) {
    if (alive == 0) {
      double high =
          before.isEmpty()
              ? TakeRateInterval.wilson(0, atRisk, coverage).high()
              : before.get(before.size() - 1).interval().high();
      return new Interval(0, high, coverage);
    }
    double spread = half / Math.log(alive);
    return new Interval(
        Math.pow(alive, Math.exp(-spread)), Math.pow(alive, Math.exp(spread)), coverage);
  }

  /**
   * The days on which grafts were found lost.
   *
   * @return in order of days; none if no graft was lost
   */
  public List<Step> steps() {
    return steps;
  }

  /**
   * Grafts watched.
   *
   * @return at least 1
   */
  public long grafts() {
    return grafts.stream().mapToLong(FollowUp::grafts).sum();
  }

  /**
   * Grafts found lost.
   *
   * @return 0 or more
   */
  public long lost() {
    return steps.stream().mapToLong(Step::lost).sum();
  }

  /**
   * The last day any graft was looked at.
   *
   * @return days from the take; beyond it the curve says nothing
   */
  public double lastDay() {
    return grafts.stream().mapToDouble(FollowUp::days).max().orElseThrow();
  }

  /**
   * The state on a day.
   *
   * @param days days from the take, 0 to {@link #lastDay}
   * @return the share alive after losses of that day, with the grafts still looked at
   * @throws IllegalArgumentException beyond the last day
   */
  public Step at(double days) {
    if (!(days >= 0 && days <= lastDay())) {
      throw new IllegalArgumentException(
          "these grafts were looked at up to day %s, asked about day %s"
              .formatted(lastDay(), days));
    }
    long watched = atRisk(grafts, days);
    Step last = null;
    for (Step step : steps) {
      last = step.days() <= days ? step : last;
    }
    if (last == null) {
      Interval range =
          watched == 0
              ? new Interval(0, 1, coverage)
              : TakeRateInterval.wilson(watched, watched, coverage);
      return new Step(days, watched, 0, 1, 0, range);
    }
    long lost = last.days() == days ? last.lost() : 0;
    return new Step(days, watched, lost, last.alive(), last.standardError(), last.interval());
  }

  /**
   * The day by which half were lost.
   *
   * @return first day with a share of at most a half; empty if it stays above
   */
  public OptionalDouble median() {
    return firstAtMostHalf(Step::alive);
  }

  /**
   * The earliest the median may be: where the lower limits reach a half.
   *
   * @return days; empty if they stay above
   * @see "Brookmeyer and Crowley (1982), Biometrics 38, 29-41"
   */
  public OptionalDouble medianLow() {
    return firstAtMostHalf(step -> step.interval().low());
  }

  /**
   * The latest the median may be: where the upper limits reach a half.
   *
   * @return days; empty if they stay above, so that no upper limit can be given
   */
  public OptionalDouble medianHigh() {
    return firstAtMostHalf(step -> step.interval().high());
  }

  private OptionalDouble firstAtMostHalf(ToDoubleFunction<Step> share) {
    // a product of exact halves may come out a rounding above one half
    return steps.stream()
        .filter(step -> share.applyAsDouble(step) <= 0.5 + 1e-12)
        .mapToDouble(Step::days)
        .findFirst();
  }
}
