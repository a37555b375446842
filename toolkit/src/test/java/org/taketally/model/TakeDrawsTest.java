package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;

/** Draws against long Gibbs runs of published examples; their prior, Gamma(0.001, 0.001). */
class TakeDrawsTest {

  private static final int COUNT = 8000;
  private static final Prior PUBLISHED = Prior.gammaOnPrecision(0.001, 0.001);

  private static double mean(int count, IntToDoubleFunction value) {
    return IntStream.range(0, count).mapToDouble(value).average().orElseThrow();
  }

  private static double sd(int count, IntToDoubleFunction value) {
    double mean = mean(count, value);
    return Math.sqrt(mean(count, d -> Math.pow(value.applyAsDouble(d) - mean, 2)));
  }

  private static void agrees(String what, IntToDoubleFunction value, double mean, double sd) {
    assertThat(mean(COUNT, value)).as("mean of " + what).isCloseTo(mean, within(0.05 * sd));
    assertThat(sd(COUNT, value)).as("sd of " + what).isCloseTo(sd, within(0.05 * sd));
  }

  /** Reference: JAGS on the data of Crowder (1978), as in the OpenBUGS manual, example Seeds. */
  @Test
  void seeds_agree_with_gibbs_sampling() {
    TakeFit fit =
        TakeModel.ofTakes()
            .adjustFor("x1", "x2", "x12")
            .varyBy("plate")
            .fit(PublishedMixedModelTest.seeds());
    TakeDraws draws = fit.draws(COUNT, 3, PUBLISHED);
    agrees("alpha0", d -> draws.beta(d)[0], -0.5526, 0.1918);
    agrees("alpha1", d -> draws.beta(d)[1], 0.0826, 0.3121);
    agrees("alpha2", d -> draws.beta(d)[2], 1.3556, 0.2726);
    agrees("alpha12", d -> draws.beta(d)[3], -0.8273, 0.4323);
    agrees("sigma", d -> draws.sds(d)[0], 0.2845, 0.1382);
  }

  private static Cells hospitals() {
    CheckData data = CheckData.of("surgical");
    return data.cells(
        data.counts("operations"),
        data.counts("deaths"),
        java.util.List.of(data.factor("hospital")),
        java.util.List.of());
  }

  private static double share(TakeDraws draws, int hospital, int d) {
    return 1 / (1 + Math.exp(-draws.beta(d)[0] - draws.effects("hospital", d)[hospital]));
  }

  /** Reference: JAGS on the OpenBUGS manual's example Surgical, random effects. */
  @Test
  void hospitals_agree_with_gibbs_sampling() {
    TakeFit fit = TakeModel.ofTakes().varyBy("hospital").fit(hospitals());
    TakeDraws draws = fit.draws(COUNT, 3, PUBLISHED);
    double[][] published = {
      {0.05321, 0.01973}, {0.10316, 0.02185}, {0.07077, 0.01760}, {0.05924, 0.00794},
      {0.05176, 0.01327}, {0.06916, 0.01475}, {0.06672, 0.01594}, {0.12329, 0.02236},
      {0.06995, 0.01446}, {0.07855, 0.01997}, {0.10213, 0.01750}, {0.06853, 0.01174}
    };
    agrees("mu", d -> draws.beta(d)[0], -2.55435, 0.15430);
    agrees("sigma", d -> draws.sds(d)[0], 0.40431, 0.15746);
    for (int h = 0; h < published.length; h++) {
      int hospital = h;
      agrees(
          "hospital " + (char) ('A' + h),
          d -> share(draws, hospital, d),
          published[h][0],
          published[h][1]);
    }
  }

  @Test
  void same_seed_same_draws() {
    TakeFit fit = TakeModel.ofTakes().varyBy("hospital").fit(hospitals());
    assertThat(Arrays.toString(fit.draws(20, 5).linearPredictor(7)))
        .isEqualTo(Arrays.toString(fit.draws(20, 5).linearPredictor(7)))
        .isNotEqualTo(Arrays.toString(fit.draws(20, 6).linearPredictor(7)));
  }

  /**
   * Eight takes of eleven, nothing varying: the flat prior's posterior mean of the logit is
   * digamma(8) - digamma(3) = 1.0929, to first order 1.0852; Jeffreys' is digamma(8.5) -
   * digamma(3.5) = 0.9752, to first order the fit's log(8/3) = 0.9808.
   */
  @Test
  void jeffreys_prior_centres_on_the_fit_and_the_flat_one_lies_further_out() {
    TakeFit fit =
        TakeModel.ofTakes()
            .fit(
                new Cells(
                    java.util.List.of(),
                    java.util.List.of(),
                    new int[] {11},
                    new int[] {8},
                    0,
                    org.taketally.terms.Provenance.of("simulated", 1)));
    TakeDraws flat = fit.draws(COUNT, 3, Prior.halfNormal(1));
    TakeDraws jeffreys = fit.draws(COUNT, 3);
    // The draws' error is 0.677 / sqrt(8000) = 0.008.
    assertThat(mean(COUNT, d -> flat.beta(d)[0])).isCloseTo(1.0852, within(0.02));
    assertThat(mean(COUNT, d -> jeffreys.beta(d)[0])).isCloseTo(0.9808, within(0.02));
    assertThat(sd(COUNT, d -> jeffreys.beta(d)[0])).isCloseTo(0.677, within(0.02));
  }

  @Test
  void draws_do_not_depend_on_the_number_of_threads() {
    double[][] sds = new double[2][];
    double[][] beta = new double[2][];
    for (int i = 0; i < 2; i++) {
      FitOptions threads = FitOptions.defaults().withThreads(1 + 3 * i);
      TakeFit fit =
          TakeModel.ofTakes()
              .adjustFor("x1", "x2")
              .varyBy("plate")
              .fit(PublishedMixedModelTest.seeds(), threads);
      TakeDraws draws = fit.draws(200, 5);
      sds[i] = IntStream.range(0, 200).mapToDouble(d -> draws.sds(d)[0]).toArray();
      beta[i] = IntStream.range(0, 200).mapToDouble(d -> draws.beta(d)[1]).toArray();
    }
    assertThat(sds[1]).isEqualTo(sds[0]);
    assertThat(beta[1]).isEqualTo(beta[0]);
  }

  @Test
  void a_fit_is_large_by_its_cells_or_by_the_levels_solved_for_together() {
    assertThat(PosteriorSampler.isLarge(100_001, 0)).isTrue();
    assertThat(PosteriorSampler.isLarge(100_000, 1_000)).isFalse();
    assertThat(PosteriorSampler.isLarge(5_001, 1_001)).isTrue();
    assertThat(PosteriorSampler.isLarge(5_000, 4_000)).isFalse();
  }
}
