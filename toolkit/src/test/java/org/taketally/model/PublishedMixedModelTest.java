package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.compare.LikelihoodRatioTest;
import org.taketally.model.numeric.Vectors;

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

  private static final TakeModel SEEDS =
      TakeModel.ofTakes().adjustFor("x1", "x2", "x12").varyBy("plate");

  private static double[] errors(TakeFit fit) {
    return fit.fixed().stream().mapToDouble(FixedEffect::standardError).toArray();
  }

  /** Twice the log-likelihood below the model with one take rate a row. */
  private static double deviance(TakeFit fit) {
    double saturated = 0;
    for (int i = 0; i < fit.cells().size(); i++) {
      double y = fit.cells().takes(i);
      double n = fit.cells().grafts(i);
      saturated += (y > 0 ? y * Math.log(y / n) : 0) + (y < n ? (n - y) * Math.log1p(-y / n) : 0);
    }
    return 2 * (saturated - fit.logLikelihood());
  }

  /** lme4 documentation: nAGQ = 9; its log-likelihood there is relative to the saturated model. */
  @Test
  void cattle_herds_by_quadrature() {
    TakeFit fit = TakeModel.ofTakes().adjustFor("period").varyBy("herd").nodes(9).fit(cbpp());
    assertThat(fit.beta())
        .containsExactly(new double[] {-1.3992, -0.9914, -1.1278, -1.5795}, within(1e-4));
    assertThat(fit.varying("herd").standardDeviation()).isCloseTo(0.6475, within(5e-5));
    assertThat(deviance(fit)).isCloseTo(100.0100, within(1e-4));
    assertThat(errors(fit))
        .containsExactly(new double[] {0.23351, 0.30677, 0.32677, 0.42760}, within(1e-3));
  }

  /** MixedModels.jl test/pirls.jl: sum of squared modes of u, relative tolerance 1e-4. */
  @Test
  void cattle_herds_modes() {
    TakeFit fit = TakeModel.ofTakes().adjustFor("period").varyBy("herd").fit(cbpp());
    VaryingFactor herd = fit.varying("herd");
    double sum = Vectors.dot(herd.levelEffects(), herd.levelEffects());
    assertThat(sum / Math.pow(herd.standardDeviation(), 2)).isCloseTo(9.72301, within(3e-3));
  }

  /** lme4 documentation: likelihood-ratio test of the extra scatter; half the p at the edge. */
  @Test
  void cattle_herds_test_of_extra_scatter() {
    TakeFit smaller = TakeModel.ofTakes().adjustFor("period").varyBy("herd").fit(cbpp());
    TakeFit larger = TakeModel.ofTakes().adjustFor("period").varyBy("herd", "visit").fit(cbpp());
    LikelihoodRatioTest nested = LikelihoodRatioTest.of(smaller, larger);
    assertThat(nested.chiSquare()).isCloseTo(9.4148, within(7e-4));
    assertThat(nested.simplePValue()).isCloseTo(0.002152, within(2e-6));
    assertThat(nested.pValue()).isCloseTo(0.001076, within(1e-6));
  }

  /** lme4 documentation: nAGQ = 0, where beta is the joint mode and theta the Laplace maximum. */
  @Test
  void cattle_herds_with_joint_modes_only() {
    JointFits.JointFit fit =
        JointFits.jointModesOnly(
            TakeModel.ofTakes().adjustFor("period").varyBy("herd"), cbpp(), 0.3, 0.5);
    assertThat(fit.sd()).isCloseTo(0.6418, within(1e-4));
    assertThat(fit.logLikelihood()).isCloseTo(-92.0543, within(1e-4));
    assertThat(fit.beta())
        .containsExactly(new double[] {-1.3605, -0.9762, -1.1111, -1.5597}, within(1e-4));
  }

  /** OpenBUGS manual, example Seeds: logistic regression, 3 decimals; deviance from R. */
  @Test
  void seeds_without_plates() {
    TakeFit fit = SEEDS.without("plate").fit(seeds());
    assertThat(fit.beta())
        .containsExactly(new double[] {-0.558, 0.146, 1.318, -0.778}, within(5e-4));
    assertThat(errors(fit))
        .containsExactly(new double[] {0.126, 0.223, 0.177, 0.306}, within(6e-4));
    assertThat(deviance(fit)).isCloseTo(33.27779, within(5e-6));
  }

  /**
   * OpenBUGS manual, example Seeds: maximum likelihood (EGRET), 3 decimals. The intercept prints as
   * -0.546; R gives -0.5484 with 10 and with 25 nodes. Standard deviation: lme4 at tolerance 1e-10.
   */
  @Test
  void seeds_by_quadrature() {
    TakeFit fit = SEEDS.nodes(25).fit(seeds());
    assertThat(fit.beta())
        .containsExactly(new double[] {-0.5484, 0.097, 1.337, -0.811}, within(7e-4));
    assertThat(errors(fit))
        .containsExactly(new double[] {0.167, 0.278, 0.237, 0.385}, within(6e-4));
    assertThat(fit.varying("plate").standardDeviation()).isCloseTo(0.236242173, within(1e-7));
  }

  /** R, lme4, 25 nodes, without the interaction. */
  @Test
  void seeds_additive() {
    TakeFit fit = SEEDS.without("x12").nodes(25).fit(seeds());
    assertThat(fit.beta())
        .containsExactly(new double[] {-0.38852, -0.34666, 1.02872}, within(2e-5));
    assertThat(fit.varying("plate").standardDeviation()).isCloseTo(0.29509, within(1e-5));
  }

  /** agridat, crowder.seeds: the other base levels, 2 decimals. */
  @Test
  void seeds_with_other_base_levels() {
    CheckData data = CheckData.of("seeds_crowder");
    double[] x1 = data.numbers("x1");
    double[] x12 = data.numbers("x2");
    for (int i = 0; i < x1.length; i++) {
      x1[i] = 1 - x1[i];
      x12[i] *= x1[i];
    }
    Cells cells =
        data.cells(
            data.counts("n"),
            data.counts("r"),
            List.of(data.rowFactor("plate")),
            List.of(new Measure("x1", x1), data.measure("x2"), new Measure("x12", x12)));
    assertThat(SEEDS.fit(cells).beta())
        .containsExactly(new double[] {-0.45, -0.10, 0.53, 0.81}, within(5e-3));
  }

  private static Cells toenail() {
    CheckData data = CheckData.of("toenail");
    double[] time = data.numbers("time");
    String[] treatment = data.texts("treatment");
    String[] outcome = data.texts("outcome");
    double[] terbinafine = new double[time.length];
    double[] both = new double[time.length];
    int[] ones = new int[time.length];
    int[] severe = new int[time.length];
    for (int i = 0; i < time.length; i++) {
      terbinafine[i] = treatment[i].equals("terbinafine") ? 1 : 0;
      both[i] = terbinafine[i] * time[i];
      ones[i] = 1;
      severe[i] = outcome[i].equals("moderate or severe") ? 1 : 0;
    }
    return data.cells(
        ones,
        severe,
        List.of(data.factor("patientID")),
        List.of(
            new Measure("terbinafine", terbinafine),
            new Measure("month", time),
            new Measure("both", both)));
  }

  /**
   * R, lme4: 50 nodes at its usual tolerance, 20 nodes at 1e-10; the published -1.62, -0.16, -0.39,
   * -0.137, 4.01 are from memory.
   */
  @Test
  void toenail_needs_many_nodes() {
    TakeModel model =
        TakeModel.ofTakes().adjustFor("terbinafine", "month", "both").varyBy("patientID");
    TakeFit fifty = model.nodes(50).fit(toenail());
    assertThat(fifty.beta())
        .containsExactly(new double[] {-1.6183, -0.1608, -0.3910, -0.1368}, within(1e-4));
    assertThat(fifty.varying("patientID").standardDeviation()).isCloseTo(4.0066, within(1e-4));
    assertThat(fifty.logLikelihood()).isCloseTo(-625.3973, within(1e-4));
    TakeFit twenty = model.nodes(20).fit(toenail());
    assertThat(twenty.varying("patientID").standardDeviation()).isCloseTo(4.0037157, within(1e-5));
    assertThat(twenty.logLikelihood()).isCloseTo(-625.3752708, within(1e-6));
  }

  /** R, lme4, 25 nodes; OpenBUGS manual, example Surgical. */
  @Test
  void hospitals_by_quadrature() {
    CheckData data = CheckData.of("surgical");
    Cells cells =
        data.cells(
            data.counts("operations"),
            data.counts("deaths"),
            List.of(data.factor("hospital")),
            List.of());
    TakeFit fit = TakeModel.ofTakes().varyBy("hospital").nodes(25).fit(cells);
    assertThat(fit.beta()[0]).isCloseTo(-2.543962, within(2e-5));
    assertThat(errors(fit)[0]).isCloseTo(0.134999, within(5e-4));
    assertThat(fit.varying("hospital").standardDeviation()).isCloseTo(0.3577, within(5e-5));
  }

  private static Cells hickory(String year) {
    CheckData data = CheckData.of("graft_hickory_bixby_" + year);
    return data.cells(
        data.counts("grafts_set"),
        data.counts("catches"),
        List.of(data.factor("variety"), stock(data.texts("stock"))),
        List.of());
  }

  private static Factor stock(String[] texts) {
    List<String> levels = List.of("shagbark", "mockernut", "pignut", "pecan", "bitternut");
    int[] codes = new int[texts.length];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = levels.indexOf(texts[i]);
    }
    return new Factor("stock", levels, codes);
  }

  /**
   * Counts: Bixby (1924), Stocks for hickories; fits: R, lme4, 25 nodes at its usual tolerance
   * (good to 1e-4), Laplace at tolerance 1e-10.
   */
  @Test
  void hickory_stocks_as_levels() {
    TakeModel model = TakeModel.ofTakes().adjustFor("stock").varyBy("variety");
    TakeFit fit = model.nodes(25).fit(hickory("1923"));
    assertThat(fit.beta())
        .containsExactly(
            new double[] {0.59714, -0.77730, -0.16813, -0.09173, -0.07145}, within(2e-4));
    assertThat(errors(fit))
        .containsExactly(new double[] {0.54197, 0.55482, 0.53587, 0.54543, 0.52872}, within(1e-3));
    assertThat(fit.varying("variety").standardDeviation()).isCloseTo(1.2039, within(1e-4));
    TakeFit laplace = model.nodes(1).fit(hickory("1923"));
    assertThat(laplace.varying("variety").standardDeviation()).isCloseTo(1.18775999, within(1e-6));
    assertThat(laplace.logLikelihoodOfCounts()).isCloseTo(-83.86482377, within(1e-7));
  }

  /** R, lme4, Laplace at tolerance 1e-10: the spread between stocks is exactly 0. */
  @Test
  void hickory_stocks_do_not_vary() {
    TakeFit fit = TakeModel.ofTakes().varyBy("variety", "stock").fit(hickory("1923"));
    assertThat(fit.beta()[0]).isCloseTo(0.374392797, within(1e-6));
    assertThat(fit.varying("variety").standardDeviation()).isCloseTo(1.18381668, within(1e-6));
    assertThat(fit.varying("stock").standardDeviation()).isZero();
    assertThat(fit.logLikelihoodOfCounts()).isCloseTo(-85.62827086, within(1e-7));
    assertThat(fit.warnings())
        .anySatisfy(
            warning -> {
              assertThat(warning.kind()).isEqualTo(FitWarning.Kind.SPREAD_AT_ZERO);
              assertThat(warning.sentence())
                  .startsWith("the spread between levels of stock is estimated as zero");
            });
  }

  /** R: 1923 deviances without variety; null 131.88 (64 df), stock 127.03 (60 df). */
  @Test
  void hickory_deviances() {
    assertThat(deviance(TakeModel.ofTakes().fit(hickory("1923")))).isCloseTo(131.88, within(5e-3));
    assertThat(deviance(TakeModel.ofTakes().adjustFor("stock").fit(hickory("1923"))))
        .isCloseTo(127.03, within(5e-3));
  }

  /** agridat, mead.germination (Mead, Curnow and Hasted 2002, p. 350): deviances, 2 decimals. */
  @Test
  void germination_deviances() {
    CheckData data = CheckData.of("mead_germination");
    String[] temperature = data.texts("temp");
    String[] concentration = data.texts("conc");
    String[] both = new String[temperature.length];
    for (int i = 0; i < both.length; i++) {
      both[i] = temperature[i] + " " + concentration[i];
    }
    Cells cells =
        data.cells(
            data.counts("seeds"),
            data.counts("germ"),
            List.of(data.factor("temp"), data.factor("conc"), CheckData.factor("both", both)),
            List.of());
    TakeModel none = TakeModel.ofTakes();
    assertThat(deviance(none.fit(cells))).isCloseTo(1193.80, within(5e-3));
    assertThat(deviance(none.adjustFor("temp").fit(cells))).isCloseTo(430.11, within(5e-3));
    assertThat(deviance(none.adjustFor("conc").fit(cells))).isCloseTo(980.10, within(5e-3));
    assertThat(deviance(none.adjustFor("temp", "conc").fit(cells))).isCloseTo(148.11, within(5e-3));
    assertThat(deviance(none.adjustFor("both").fit(cells))).isCloseTo(55.64, within(5e-3));
  }

  /**
   * vcdExtra, Bartlett (1935): no three-way association 2.293841, by proportional fitting stopped
   * early; R, glm to 1e-14: 2.2938393147 and fitted 161.0961403; the rest from R.
   */
  @Test
  void plum_cuttings() {
    CheckData data = CheckData.of("plum_cuttings");
    Cells cells =
        data.cells(
            data.counts("planted"),
            data.counts("alive"),
            List.of(data.factor("time"), data.factor("length")),
            List.of());
    TakeFit fit = TakeModel.ofTakes().adjustFor("time", "length").fit(cells);
    assertThat(fit.beta()).containsExactly(new double[] {0.7138, -1.4275, -1.0177}, within(5e-5));
    assertThat(errors(fit)).containsExactly(new double[] {0.1217, 0.1465, 0.1455}, within(5e-5));
    assertThat(deviance(fit))
        .isCloseTo(2.293841, within(3e-6))
        .isCloseTo(2.2938393147, within(1e-9));
    assertThat(240 * fit.fittedTake()[0]).isCloseTo(161.0961403, within(1e-6));
  }

  /** MixedModels.jl test/pirls.jl: deviance 8151.40, relative 1e-5; glmmTMB 1.1.5 for the rest. */
  @Test
  void crossed_subjects_and_items() {
    CheckData data = CheckData.of("verbagg");
    int[] yes = data.counts("yes");
    int[] ones = new int[yes.length];
    java.util.Arrays.fill(ones, 1);
    Cells cells =
        data.cells(
            ones,
            yes,
            List.of(
                data.factor("id"),
                data.factor("item"),
                data.factor("gender"),
                data.factor("btype"),
                data.factor("situ")),
            List.of(data.measure("anger")));
    TakeFit fit =
        TakeModel.ofTakes()
            .adjustFor("anger", "gender", "btype", "situ")
            .base("gender", "F")
            .base("btype", "curse")
            .base("situ", "other")
            .varyBy("id", "item")
            .fit(cells);
    assertThat(-2 * fit.logLikelihood()).isCloseTo(8151.40, within(0.01));
    assertThat(fit.logLikelihood()).isCloseTo(-4075.69986, within(1e-5));
    assertThat(fit.varying("id").standardDeviation()).isCloseTo(1.33970423, within(2e-5));
    assertThat(fit.varying("item").standardDeviation()).isCloseTo(0.49530637, within(2e-5));
    assertThat(fit.beta())
        .containsExactly(
            new double[] {0.199065, 0.057429, 0.320717, -1.058804, -2.105390, -1.055456},
            within(2e-5));
  }

  /**
   * OpenBUGS manual, example Seeds: penalised quasi-likelihood of Breslow and Clayton (1993), 3
   * decimals; alpha1 prints as 0.77, a misprint for 0.077. The joint modes and their covariance are
   * the engine's; only the step of the spread, b'b / (q - tr(K) / sigma^2), stands here.
   */
  @Test
  void seeds_by_penalised_quasi_likelihood() {
    JointFits.JointFit fit = JointFits.penalisedQuasiLikelihood(SEEDS, seeds());
    assertThat(fit.beta())
        .containsExactly(new double[] {-0.542, 0.077, 1.339, -0.825}, within(6e-4));
    assertThat(fit.errors())
        .containsExactly(new double[] {0.190, 0.308, 0.270, 0.430}, within(6e-4));
    assertThat(fit.sd()).isCloseTo(0.313, within(5e-4));
  }
}
