package org.taketally.watch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.terms.Logit;

/**
 * What is to be expected of each lot once those counted before it are known: the effect of the
 * whole season is learnt as it goes, so that a season a little better or worse than the average
 * does not drown what stands apart in it.
 *
 * <pre>
 *   theta   effect of the season, logits, N(0, tau^2) before any count
 *   tau^2   variance, over the seasons that may be, of the mean logit of all lots
 *   s_i^2   variance of lot i about that mean
 *   rho_i   p q (s_i^2 + V) / (1 + p q (s_i^2 + V)), beside the lot's own correlation
 *   update  1/V' = 1/V + I,  theta' = theta + V' r / e,  I = n p q / e,  e = 1 + (n - 1) rho
 *           r = takes - n p, no more than {@value #MOST_SURPRISE} of its standard deviations
 * </pre>
 *
 * <p>The bound keeps a bad batch from teaching that the season is bad (Huber 1964).
 *
 * @see "West and Harrison (1997), Bayesian Forecasting and Dynamic Models, chapter 2"
 */
final class LearntSeason {

  private static final double MOST_SURPRISE = 2;

  private final int[] grafts;
  private final double[] logits;
  private final double[] ownVariance;
  private final double[] ownCorrelation;
  private final double variance;

  LearntSeason(List<SeasonChart.Lot> lots) {
    int seasons = lots.get(0).expected().seasons();
    this.grafts = lots.stream().mapToInt(SeasonChart.Lot::grafts).toArray();
    this.ownCorrelation = lots.stream().mapToDouble(lot -> lot.expected().correlation()).toArray();
    double[][] all =
        lots.stream()
            .map(lot -> Arrays.stream(lot.expected().takes()).map(Logit::of).toArray())
            .toArray(double[][]::new);
    this.logits = lots.stream().mapToDouble(lot -> Logit.of(lot.expected().mean())).toArray();
    double total = Arrays.stream(grafts).sum();
    double[] common = new double[seasons];
    for (int i = 0; i < all.length; i++) {
      for (int d = 0; d < seasons; d++) {
        common[d] += grafts[i] / total * all[i][d];
      }
    }
    this.variance = variance(common);
    this.ownVariance =
        IntStream.range(0, all.length)
            .mapToDouble(
                i ->
                    variance(
                        IntStream.range(0, seasons)
                            .mapToDouble(d -> all[i][d] - common[d])
                            .toArray()))
            .toArray();
  }

  /** Spread of the season's effect before any count, logits. */
  double tau() {
    return Math.sqrt(variance);
  }

  /** Expectations and the season's effect after the last lot. */
  record Learnt(List<LotExpectation> expected, double seasonEffect) {}

  /** With takes as they came. */
  Learnt from(int[] takes) {
    return run(takes);
  }

  /** Before any count: what will be expected if all is as expected, for setting a limit. */
  List<LotExpectation> planned() {
    return run(null).expected();
  }

  private Learnt run(int[] takes) {
    List<LotExpectation> expected = new ArrayList<>();
    double seasonEffect = 0;
    double v = variance;
    for (int i = 0; i < grafts.length; i++) {
      double p = take(logits[i] + seasonEffect);
      double pq = p * (1 - p);
      double known = together(pq * ownVariance[i], ownCorrelation[i]);
      double seen = together(pq * (ownVariance[i] + v), ownCorrelation[i]);
      expected.add(new LotExpectation(new double[] {p}, seen));
      double n = grafts[i];
      double effect = 1 + (n - 1) * known;
      v = 1 / (1 / Math.max(v, 1e-9) + n * pq / effect);
      if (takes != null) {
        double most = MOST_SURPRISE * Math.sqrt(n * pq * (1 + (n - 1) * seen));
        double surprise = Math.max(-most, Math.min(most, takes[i] - n * p));
        seasonEffect += v * surprise / effect;
      }
    }
    return new Learnt(expected, seasonEffect);
  }

  /** Correlation from a variance on the scale of takes, relative to p q, and one beside it. */
  private static double together(double shared, double own) {
    return Math.min(0.95, shared / (1 + shared) + own);
  }

  private static double variance(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    return Arrays.stream(values).map(x -> (x - mean) * (x - mean)).average().orElseThrow();
  }

  static double take(double logit) {
    return Math.min(1 - 1e-6, Math.max(1e-6, Logit.take(logit)));
  }
}
