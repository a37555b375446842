package org.taketally.plan.order;

import java.util.Arrays;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.terms.Interval;

/**
 * Takes of a lot in a season to come: each season that may be has its own share of grafts that end
 * as wanted, and within it the grafts are made in batches that each have luck of their own.
 *
 * <pre>
 *   p_d   share in season d, d = 1 .. D, all equally likely
 *   n = q m + r grafts in q batches of m and one of r; each batch beta-binomial about p_d
 *   P(X >= N) = mean over d of P(X >= N | p_d), the sum over batches by convolution, or above
 *   {@value #MOST_CONVOLVED} grafts by its mean and variance
 * </pre>
 */
public final class SeasonTakes implements LotTakes {

  private static final int MOST_CONVOLVED = 400;
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  /** Seasons up to which each is worked out by itself. */
  private static final int MOST_BY_THEMSELVES = 1000;

  /** Steps of the grid that the chances of more seasons are read off. */
  private static final int STEPS = 200;

  /** Shares are kept within this of 0 and 1. */
  private static final double EDGE = 1e-9;

  private final double[] shares;
  private final BatchLuck batches;

  private SeasonTakes(double[] shares, BatchLuck batches) {
    this.shares = shares;
    this.batches = batches;
  }

  /**
   * Luck shared by grafts of one batch beyond that of the season.
   *
   * @param size grafts in a batch, 1 or more
   * @param correlation of two grafts of the same batch, 0 or more and below 1
   */
  public record BatchLuck(int size, double correlation) {

    /** Every graft its own luck. */
    public static final BatchLuck NONE = new BatchLuck(1, 0);

    public BatchLuck {
      if (size < 1) {
        throw new IllegalArgumentException("a batch holds 1 graft or more, got " + size);
      }
      BetaBinomialTakes.requireCorrelation(correlation);
    }
  }

  /**
   * From seasons that may be.
   *
   * @param shares share of grafts that end as wanted in each season that may be, 0 to 1; at least
   *     one above 0
   * @param batches luck within a season
   * @return the lot
   * @throws IllegalArgumentException if a share is outside its range
   */
  public static SeasonTakes of(double[] shares, BatchLuck batches) {
    if (shares.length == 0 || Arrays.stream(shares).anyMatch(p -> !(p >= 0 && p <= 1))) {
      throw new IllegalArgumentException(
          "shares of takes must lie within 0 to 1, got " + Arrays.toString(shares));
    }
    if (Arrays.stream(shares).max().orElse(0) == 0) {
      throw new IllegalArgumentException(
          "no graft takes in any season that may be, so no number of grafts gives a tree");
    }
    return new SeasonTakes(
        Arrays.stream(shares).map(p -> Math.min(1 - EDGE, Math.max(EDGE, p))).toArray(), batches);
  }

  /**
   * The same after losing some of the takes.
   *
   * @param lost share of takes lost in each season, 0 or more and below 1, one per season
   * @return the lot as it ends
   */
  public SeasonTakes afterLosing(double[] lost) {
    double[] left = new double[shares.length];
    Arrays.setAll(left, d -> shares[d] * (1 - lost[d % lost.length]));
    return of(left, batches);
  }

  /**
   * The same seasons in another order.
   *
   * @param place for each season the place, in this lot, of the one to put there
   * @return the lot
   */
  SeasonTakes inOrder(int[] place) {
    double[] moved = new double[shares.length];
    Arrays.setAll(moved, d -> shares[place[d]]);
    return new SeasonTakes(moved, batches);
  }

  /**
   * Seasons that may be.
   *
   * @return 1 or more
   */
  public int seasons() {
    return shares.length;
  }

  /**
   * The share of grafts that end as wanted, season by season.
   *
   * @return a copy, 0 to 1 each
   */
  public double[] shares() {
    return shares.clone();
  }

  /**
   * From season to season: the middle of the shares.
   *
   * @param coverage share of seasons within, strictly between 0 and 1
   * @return the range
   */
  public Interval shareRange(double coverage) {
    double[] sorted = shares.clone();
    Arrays.sort(sorted);
    int cut = (int) Math.floor(sorted.length * (1 - coverage) / 2);
    return new Interval(sorted[cut], sorted[sorted.length - 1 - cut], coverage);
  }

  @Override
  public double expectedShare() {
    return Arrays.stream(shares).average().orElseThrow();
  }

  @Override
  public double probabilityOfAtLeast(int trees, int grafts) {
    if (trees <= 0) {
      return 1;
    }
    if (trees > grafts) {
      return 0;
    }
    return Arrays.stream(probabilities(trees, grafts)).average().orElseThrow();
  }

  /**
   * The chance in each of the seasons that may be.
   *
   * @param trees 1 or more
   * @param grafts grafts made, at least {@code trees}
   * @return chances, 0 to 1, one a season
   */
  double[] probabilities(int trees, int grafts) {
    return shares.length <= MOST_BY_THEMSELVES || grafts > MOST_CONVOLVED
        ? Arrays.stream(shares).map(p -> probability(p, trees, grafts)).toArray()
        : byGrid(trees, grafts);
  }

  /** The chance rises smoothly with the share, so that many seasons need few chances. */
  private double[] byGrid(int trees, int grafts) {
    double low = Arrays.stream(shares).min().orElseThrow();
    double high = Arrays.stream(shares).max().orElseThrow();
    double step = (high - low) / STEPS;
    if (high - low < EDGE) {
      double all = probability(low, trees, grafts);
      return Arrays.stream(shares).map(p -> all).toArray();
    }
    double[] grid = new double[STEPS + 1];
    Arrays.setAll(grid, i -> i < STEPS ? low + i * step : high);
    double[] chances = Arrays.stream(grid).map(p -> probability(p, trees, grafts)).toArray();
    return Arrays.stream(shares)
        .map(new LinearInterpolator().interpolate(grid, chances)::value)
        .toArray();
  }

  private double probability(double p, int trees, int grafts) {
    if (batches.correlation() == 0 || batches.size() == 1) {
      return BinomialDistribution.of(grafts, p).survivalProbability(trees - 1);
    }
    if (grafts > MOST_CONVOLVED) {
      return byMoments(p, trees, grafts);
    }
    double fewer = 0;
    double[] counts = counts(p, grafts, trees);
    for (int k = 0; k < trees; k++) {
      fewer += counts[k];
    }
    return Math.max(0, 1 - fewer);
  }

  private double byMoments(double p, int trees, int grafts) {
    int m = batches.size();
    int rest = grafts % m;
    double effect =
        ((grafts - rest) * (1 + (m - 1) * batches.correlation())
                + rest * (1 + Math.max(0, rest - 1) * batches.correlation()))
            / grafts;
    double sd = Math.sqrt(grafts * p * (1 - p) * effect);
    return NORMAL.survivalProbability((trees - 0.5 - grafts * p) / sd);
  }

  /** Chances of 0 to {@code most} - 1 takes in all batches together. */
  private double[] counts(double p, int grafts, int most) {
    int m = batches.size();
    double[] all = {1};
    double[] power = oneBatch(p, m, most);
    for (int left = grafts / m; left > 0; left >>= 1) {
      if ((left & 1) == 1) {
        all = convolved(all, power, most);
      }
      power = left > 1 ? convolved(power, power, most) : power;
    }
    all = grafts % m > 0 ? convolved(all, oneBatch(p, grafts % m, most), most) : all;
    return Arrays.copyOf(all, most);
  }

  private double[] oneBatch(double p, int size, int most) {
    return new BetaBinomialTakes(p, batches.correlation())
        .probabilities(size, Math.min(size + 1, most));
  }

  private static double[] convolved(double[] first, double[] second, int most) {
    double[] sum = new double[Math.min(most, first.length + second.length - 1)];
    for (int i = 0; i < first.length; i++) {
      for (int j = 0; j < second.length && i + j < sum.length; j++) {
        sum[i + j] += first[i] * second[j];
      }
    }
    return sum;
  }

  /**
   * Seasons whose share varies as a beta distribution, in rising order: its quantiles at the
   * middles of equal parts.
   *
   * @param take expected share, above 0 and below 1
   * @param correlation of two grafts of a season, above 0 and below 1
   * @param seasons how many, 1 or more
   * @return shares
   */
  public static double[] betaSeasons(double take, double correlation, int seasons) {
    new BetaBinomialTakes(take, correlation);
    if (correlation == 0 || take == 1) {
      double[] same = new double[seasons];
      Arrays.fill(same, take);
      return same;
    }
    BetaDistribution beta =
        BetaDistribution.of(
            take * (1 - correlation) / correlation, (1 - take) * (1 - correlation) / correlation);
    double[] shares = new double[seasons];
    Arrays.setAll(shares, d -> beta.inverseCumulativeProbability((d + 0.5) / seasons));
    return shares;
  }
}
