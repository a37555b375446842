package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Measure;

/** Published fits of mixed models, to the precision printed. */
class PublishedMixedModelTest {

  static Cells cbpp() {
    CheckData data = CheckData.of("cbpp");
    return data.cells(
        data.counts("size"),
        data.counts("incidence"),
        List.of(data.factor("herd"), data.factor("period"), data.rowFactor("visit")),
        List.of());
  }

  static Cells seeds() {
    CheckData data = CheckData.of("seeds_crowder");
    double[] both = data.numbers("x1");
    double[] extract = data.numbers("x2");
    for (int i = 0; i < both.length; i++) {
      both[i] *= extract[i];
    }
    return data.cells(
        data.counts("n"),
        data.counts("r"),
        List.of(data.rowFactor("plate")),
        List.of(data.measure("x1"), data.measure("x2"), new Measure("x12", both)));
  }

  /**
   * lme4 documentation, reference/glmer.html and cbpp.html: Laplace, 4 decimals printed. Its search
   * stops where the log-likelihood is flat to 4 decimals, up to 6e-4 from the maximum; the
   * estimates at the maximum are those of glmmTMB 1.1.5, 6 digits.
   */
  @Test
  void cattle_herds_by_laplace() {
    TakeFit fit = TakeModel.ofTakes().adjustFor("period").varyBy("herd").fit(cbpp());
    assertThat(fit.beta())
        .containsExactly(new double[] {-1.3983, -0.9919, -1.1282, -1.5797}, within(7e-4));
    assertThat(fit.beta())
        .containsExactly(new double[] {-1.398532, -0.992332, -1.128672, -1.580313}, within(2e-6));
    assertThat(fit.varying("herd").standardDeviation()).isCloseTo(0.6421, within(2e-4));
    assertThat(fit.logLikelihoodOfCounts()).isCloseTo(-92.0266, within(4e-4));
    assertThat(-2 * fit.logLikelihoodOfCounts() + 2 * fit.parameters())
        .isCloseTo(194.0531, within(7e-4));
  }

  /** lme4 documentation: a second varying column with one level a row; its search as above. */
  @Test
  void cattle_herds_with_extra_scatter() {
    TakeFit fit = TakeModel.ofTakes().adjustFor("period").varyBy("visit", "herd").fit(cbpp());
    assertThat(fit.beta())
        .containsExactly(new double[] {-1.500, -1.226, -1.329, -1.866}, within(6e-4));
    assertThat(fit.varying("visit").standardDeviation()).isCloseTo(0.8911, within(5e-5));
    assertThat(fit.varying("herd").standardDeviation()).isCloseTo(0.1840, within(6e-5));
    assertThat(-2 * fit.logLikelihoodOfCounts()).isCloseTo(174.6383, within(5e-5));
  }

  /** R: lme4 and glmmTMB agree, Laplace log-likelihood -53.76957 and sigma 0.23458. */
  @Test
  void seeds_by_laplace() {
    TakeFit fit = TakeModel.ofTakes().adjustFor("x1", "x2", "x12").varyBy("plate").fit(seeds());
    assertThat(fit.logLikelihoodOfCounts()).isCloseTo(-53.76957, within(5e-6));
    assertThat(fit.varying("plate").standardDeviation()).isCloseTo(0.23458, within(5e-6));
  }
}
