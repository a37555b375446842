package org.taketally.checks;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.model.Prior;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** Deaths in twelve hospitals: mixed model, posterior and ranks. */
final class HospitalChecks implements CheckSource {

  private static final String EXAMPLE = "surgical";
  private static final int HOSPITALS = 12;
  private static final int DRAWS = 20_000;

  private static TakeDraws draws;

  private static Cells hospitals() {
    return CheckCells.of(EXAMPLE).factor("hospital").count("operations", "deaths");
  }

  @Override
  public void addTo(PublishedChecks checks) {
    draws =
        TakeModel.ofTakes()
            .varyBy("hospital")
            .fit(hospitals())
            .draws(DRAWS, 3, Prior.gammaOnPrecision(0.001, 0.001));
    addRates(checks);
    addSpread(checks);
    addRanks(checks);
    addMaximum(checks);
  }

  private static double rate(int hospital, int d) {
    return 1 / (1 + Math.exp(-draws.beta(d)[0] - draws.effects("hospital", d)[hospital]));
  }

  private static double[] moments(IntToDoubleFunction value) {
    double mean = IntStream.range(0, DRAWS).mapToDouble(value).average().orElseThrow();
    double square =
        IntStream.range(0, DRAWS)
            .mapToDouble(value)
            .map(x -> (x - mean) * (x - mean))
            .average()
            .orElseThrow();
    return new double[] {mean, Math.sqrt(square)};
  }

  private static void addRates(PublishedChecks checks) {
    for (int h = 0; h < HOSPITALS; h++) {
      int hospital = h;
      checks
          .check(EXAMPLE, "random-effects p[%d] mean (SD)".formatted(h + 1))
          .ours(() -> moments(d -> rate(hospital, d)))
          .within(0.002, MixedModelChecks.DRAWS)
          .referenceWithin(0.002, "the same");
    }
    checks
        .check(EXAMPLE, "pop.mean mean (SD)")
        .ours(() -> moments(d -> 1 / (1 + Math.exp(-draws.beta(d)[0]))))
        .within(0.002, MixedModelChecks.DRAWS)
        .referenceWithin(0.002, "the same");
  }

  private static void addSpread(PublishedChecks checks) {
    checks
        .check(EXAMPLE, "mu mean (SD)")
        .ours(() -> moments(d -> draws.beta(d)[0]))
        .within(0.02, MixedModelChecks.DRAWS)
        .referenceWithin(0.02, "the same");
    checks
        .check(EXAMPLE, "sigma mean (SD)")
        .ours(() -> moments(d -> draws.sds(d)[0]))
        .within(0.02, MixedModelChecks.DRAWS)
        .referenceWithin(0.02, "the same");
    checks
        .check(EXAMPLE, "sigma 95%")
        .ours(
            () -> {
              double[] sorted =
                  IntStream.range(0, DRAWS).mapToDouble(d -> draws.sds(d)[0]).sorted().toArray();
              return new double[] {sorted[(int) (0.025 * DRAWS)], sorted[(int) (0.975 * DRAWS)]};
            })
        .within(0.05, MixedModelChecks.DRAWS)
        .referenceWithin(0.05, "the same");
    checks
        .check(EXAMPLE, "second published run (Mamba.jl): mu mean, s2 mean")
        .ours(
            () ->
                new double[] {
                  moments(d -> draws.beta(d)[0])[0],
                  moments(d -> draws.sds(d)[0] * draws.sds(d)[0])[0]
                })
        .within(0.02, MixedModelChecks.DRAWS)
        .referenceReadAs("");
  }

  /** Rank of each hospital in each draw, 1 the fewest deaths. */
  private static int[][] ranks() {
    int[][] ranks = new int[HOSPITALS][DRAWS];
    for (int d = 0; d < DRAWS; d++) {
      double[] effects = draws.effects("hospital", d);
      for (int h = 0; h < HOSPITALS; h++) {
        double own = effects[h];
        ranks[h][d] = 1 + (int) Arrays.stream(effects).filter(other -> other < own).count();
      }
    }
    return ranks;
  }

  private static void addRanks(PublishedChecks checks) {
    int[][] ranks = ranks();
    StringBuilder excluding = new StringBuilder();
    for (int h = 0; h < HOSPITALS; h++) {
      double mean = Arrays.stream(ranks[h]).average().orElseThrow();
      Arrays.sort(ranks[h]);
      int low = ranks[h][(int) (0.025 * DRAWS)];
      int high = ranks[h][(int) (0.975 * DRAWS)];
      String name = String.valueOf((char) ('A' + h));
      checks
          .check(EXAMPLE, "posterior mean rank (95%) hospital " + name)
          .ours(() -> new double[] {mean, low, high})
          .referenceWithin("mean rank within 0.05, limits within one rank: draws", 0.05, 1, 1);
      if (low > 6.5 || high < 6.5) {
        excluding.append(excluding.isEmpty() ? "" : " and ").append(name);
      }
    }
    String only = excluding + " only";
    checks
        .check(EXAMPLE, "hospitals whose 95% rank interval excludes the median rank")
        .oursInWords(() -> only)
        .readAs(
            "H only",
            "K is at rank 6 or better with chance 2.56 % (600,000 exact draws, see"
                + " src/test/r/surgical-ranks.R), so 6 is its 2.5 % rank by a hair; the source's"
                + " draws fell on the other side");
  }

  private static void addMaximum(PublishedChecks checks) {
    TakeFit fit = TakeModel.ofTakes().varyBy("hospital").nodes(25).fit(hospitals());
    checks
        .check(EXAMPLE, "ML AGQ25 mu, SE, SD")
        .ours(
            () ->
                new double[] {
                  fit.beta()[0],
                  CheckCells.errors(fit)[0],
                  fit.varying("hospital").standardDeviation()
                })
        .referenceWithin(5e-4, "R's search and its curvature by differences");
  }
}
