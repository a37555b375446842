package org.taketally.watch;

import java.util.ArrayList;
import java.util.List;

/**
 * Risk-adjusted CUSUM over the lots of a season, in the order they are counted.
 *
 * <pre>
 *   n, y   grafts and takes of a lot      p   take expected on average      rho   its correlation
 *   w(y) = log BB(y | n, p', rho) - log BB(y | n, p, rho)
 *          p' the take if the odds of failing were R times as high; rho = 0 and n = 1 give the
 *          weights of Steiner et al. (2000)
 *   S = max(0, S + w)      alarm at S of the limit h or more, then S = 0
 * </pre>
 *
 * <p>The limit gives the stated number of false alarms a season, on average over the seasons that
 * may be: for each of them S moves as a Markov chain over {@value #STATES} states (Brook and Evans
 * 1972) through the lots with that season's takes. So a season that is a little better or worse
 * than the average, as seasons are, does not cry wolf more often than stated.
 *
 * @see "Steiner, Cook, Farewell and Treasure (2000), Biostatistics 1, 441-452"
 * @see "Brook and Evans (1972), Biometrika 59, 539-549"
 */
public final class SeasonChart {

  private static final int STATES = 80;
  private static final int HALVINGS = 30;
  private static final double MOST_LIMIT = 60;

  private final double oddsRatio;
  private final double limit;
  private final double falseAlarms;
  private final int steps;

  private SeasonChart(double oddsRatio, double limit, double falseAlarms, int steps) {
    this.oddsRatio = oddsRatio;
    this.limit = limit;
    this.falseAlarms = falseAlarms;
    this.steps = steps;
  }

  /**
   * A lot of the season the limit is set for.
   *
   * @param grafts grafts, 1 or more
   * @param expected what is to be expected of it
   */
  public record Lot(int grafts, LotExpectation expected) {}

  /**
   * The chart of a season.
   *
   * @param season its lots in the order of counting, those still to come included as far as they
   *     are known; one or more, all with the same number of seasons that may be
   * @param oddsRatio odds of failing to be found fast, against those expected, above 1, e.g. 2
   * @param falseAlarms stated number a season while all is as expected, above 0, e.g. 0.2 for one
   *     in five seasons
   * @return the chart with its limit
   */
  public static SeasonChart of(List<Lot> season, double oddsRatio, double falseAlarms) {
    if (!(oddsRatio > 1 && oddsRatio < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "the odds of failing to look for must be above 1 times those expected, e.g. 2, got "
              + oddsRatio);
    }
    if (season.isEmpty()) {
      throw new IllegalArgumentException("a season to watch needs at least one lot");
    }
    double most = season.size();
    if (!(falseAlarms > 0 && falseAlarms < most)) {
      throw new IllegalArgumentException(
          "false alarms a season must be above 0 and fewer than its lots (%d), e.g. 0.2, got %s"
              .formatted(season.size(), falseAlarms));
    }
    Chain chain = new Chain(season, oddsRatio);
    double low = 0.01;
    double high = MOST_LIMIT;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = Math.sqrt(low * high);
      if (chain.alarms(middle) > falseAlarms) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return new SeasonChart(oddsRatio, high, falseAlarms, season.size());
  }

  /**
   * The limit.
   *
   * @return above 0
   */
  public double limit() {
    return limit;
  }

  /**
   * Steps between false alarms, on average, while all is as expected.
   *
   * @return above 1
   */
  double runLength() {
    return steps / falseAlarms;
  }

  /**
   * What a lot adds.
   *
   * @param lot as counted
   * @param expected what was to be expected
   * @return above 0 if it took worse
   */
  public double weight(WatchedLot lot, LotExpectation expected) {
    return weight(lot.takes(), lot.grafts(), expected, oddsRatio);
  }

  private static double weight(int takes, int grafts, LotExpectation expected, double oddsRatio) {
    double p = expected.mean();
    double worse = LotCounts.shifted(p, oddsRatio);
    return LotCounts.logProbability(takes, grafts, worse, expected.correlation())
        - LotCounts.logProbability(takes, grafts, p, expected.correlation());
  }

  /**
   * The chart after each lot.
   *
   * @param lots in the order of counting
   * @param expected of each
   * @return height (before it is put back) and whether it alarmed, one a lot
   */
  public List<Step> run(List<WatchedLot> lots, List<LotExpectation> expected) {
    List<Step> steps = new ArrayList<>();
    double height = 0;
    for (int i = 0; i < lots.size(); i++) {
      height = Math.max(0, height + weight(lots.get(i), expected.get(i)));
      boolean alarm = height >= limit;
      steps.add(new Step(lots.get(i), height, alarm));
      height = alarm ? 0 : height;
    }
    return steps;
  }

  /**
   * The chart after a lot.
   *
   * @param lot the lot
   * @param height of the chart, 0 or more
   * @param alarm whether it reached the limit
   */
  public record Step(WatchedLot lot, double height, boolean alarm) {}

  /** The heights of the chart as a Markov chain, one for each season that may be. */
  private static final class Chain {

    private final double[][] weights;
    private final double[][][] chances;
    private final int seasons;

    Chain(List<Lot> season, double oddsRatio) {
      int lots = season.size();
      seasons = season.get(0).expected().seasons();
      weights = new double[lots][];
      chances = new double[lots][seasons][];
      for (int i = 0; i < lots; i++) {
        Lot lot = season.get(i);
        if (lot.expected().seasons() != seasons) {
          throw new IllegalArgumentException("all lots must be given the same seasons");
        }
        weights[i] = new double[lot.grafts() + 1];
        for (int y = 0; y <= lot.grafts(); y++) {
          weights[i][y] = weight(y, lot.grafts(), lot.expected(), oddsRatio);
        }
        for (int d = 0; d < seasons; d++) {
          chances[i][d] = lot.expected().chances(d, lot.grafts());
        }
      }
    }

    /** Alarms a season, averaged over the seasons that may be. */
    double alarms(double limit) {
      double sum = 0;
      for (int d = 0; d < seasons; d++) {
        sum += alarms(limit, d);
      }
      return sum / seasons;
    }

    private double alarms(double limit, int season) {
      double[] now = new double[STATES + 1];
      now[0] = 1;
      double alarms = 0;
      for (int i = 0; i < weights.length; i++) {
        double[] next = new double[STATES + 1];
        for (int y = 0; y < weights[i].length; y++) {
          alarms += move(now, next, weights[i][y] * STATES / limit, chances[i][season][y]);
        }
        now = next;
      }
      return alarms;
    }

    /** Moves by one count; heights between two states are shared between them. */
    private static double move(double[] now, double[] next, double step, double chance) {
      double alarms = 0;
      for (int state = 0; state <= STATES; state++) {
        double mass = now[state] * chance;
        double height = Math.max(0, state + step);
        if (height >= STATES) {
          alarms += mass;
          next[0] += mass;
        } else {
          int below = (int) height;
          double above = height - below;
          next[below] += mass * (1 - above);
          next[below + 1] += mass * above;
        }
      }
      return alarms;
    }
  }
}
