package org.taketally.checks;

import java.util.List;
import org.taketally.cells.Cells;
import org.taketally.model.JointFits;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.VaryingFactor;
import org.taketally.model.compare.LikelihoodRatioTest;

/** Mixed models: cattle herds, toenails, verbal aggression. */
final class MixedModelChecks implements CheckSource {

  static final String DRAWS =
      "both are draws: Monte Carlo error of a published run, and of ours by nested Laplace";

  static final String LOOSE =
      "lme4's default search stops up to 6e-4 of log likelihood short of the maximum";

  @Override
  public void addTo(PublishedChecks checks) {
    addHerds(checks);
    addHerdsByJointModes(checks);
    addHerdsByQuadrature(checks);
    addHerdsWithScatter(checks);
    addAggression(checks);
    addToenails(checks);
  }

  private static Cells herds() {
    return CheckCells.of("cbpp")
        .factor("herd")
        .factor("period")
        .eachRow("visit")
        .count("size", "incidence");
  }

  private static final TakeModel HERDS = TakeModel.ofTakes().adjustFor("period").varyBy("herd");

  private static void addHerds(PublishedChecks checks) {
    String example = "cbpp";
    TakeFit fit = HERDS.fit(herds());
    double logLikelihood = fit.logLikelihoodOfCounts();
    checks
        .check(example, "Laplace beta (Int, p2, p3, p4)")
        .ours(fit::beta)
        .within(8e-4, LOOSE + "; glmmTMB 1.1.5 gives -1.398532, -0.992332, -1.128672, -1.580313")
        .referenceReadAs("-1.398532, -0.992332, -1.128672, -1.580313")
        .referenceWithin(2e-6, "glmmTMB");
    checks
        .check(example, "Laplace herd SD")
        .ours(() -> new double[] {fit.varying("herd").standardDeviation()})
        .within(2e-4, LOOSE)
        .referenceWithin(2e-4, "the same");
    checks
        .check(example, "Laplace logLik")
        .ours(() -> new double[] {logLikelihood})
        .within(4e-4, LOOSE)
        .referenceWithin(4e-4, "the same");
    checks
        .check(example, "Laplace AIC")
        .ours(() -> new double[] {2 * fit.parameters() - 2 * logLikelihood})
        .within(7e-4, LOOSE)
        .referenceWithin(7e-4, "the same");
    checks
        .check(example, "Laplace BIC")
        .ours(
            () ->
                new double[] {fit.parameters() * Math.log(fit.cells().size()) - 2 * logLikelihood})
        .within(7e-4, LOOSE);
    VaryingFactor herd = fit.varying("herd");
    checks
        .check(example, "sum of squared conditional modes on u scale")
        .ours(
            () -> {
              double sum = 0;
              for (double mode : herd.levelEffects()) {
                sum += mode * mode;
              }
              return new double[] {sum / herd.standardDeviation() / herd.standardDeviation()};
            })
        .within(3e-3, "at our slightly higher maximum");
  }

  private static void addHerdsByJointModes(PublishedChecks checks) {
    JointFits.JointFit fit = JointFits.jointModesOnly(HERDS, herds(), 0.3, 0.5);
    checks.check("cbpp", "nAGQ=0 beta").ours(fit::beta).referenceWithin(5e-5, LOOSE);
    checks
        .check("cbpp", "nAGQ=0 SD")
        .ours(() -> new double[] {fit.sd()})
        .referenceWithin(5e-5, LOOSE);
    checks
        .check("cbpp", "nAGQ=0 logLik")
        .ours(() -> new double[] {fit.logLikelihood()})
        .referenceWithin(1e-4, LOOSE);
  }

  private static void addHerdsByQuadrature(PublishedChecks checks) {
    String example = "cbpp";
    TakeFit fit = HERDS.nodes(9).fit(herds());
    checks
        .check(example, "nAGQ=9 beta")
        .ours(fit::beta)
        .within(1e-4, LOOSE)
        .referenceWithin(1e-4, "the same");
    checks
        .check(example, "nAGQ=9 SD")
        .ours(() -> new double[] {fit.varying("herd").standardDeviation()})
        .referenceWithin(1e-4, LOOSE);
    checks
        .check(example, "nAGQ=9 -2logL (relative to saturated)")
        .ours(() -> new double[] {CheckCells.deviance(fit)})
        .within(1e-4, LOOSE)
        .referenceWithin(1e-4, "the same");
    checks
        .check(example, "nAGQ=9 SE")
        .ours(() -> CheckCells.errors(fit))
        .referenceWithin(1e-3, "R's curvature is by differences");
  }

  private static void addHerdsWithScatter(PublishedChecks checks) {
    String example = "cbpp";
    TakeFit smaller = HERDS.fit(herds());
    TakeFit larger = HERDS.varyBy("herd", "visit").fit(herds());
    LikelihoodRatioTest nested = LikelihoodRatioTest.of(smaller, larger);
    checks
        .check(example, "obs+herd: SD obs, SD herd")
        .ours(
            () ->
                new double[] {
                  larger.varying("visit").standardDeviation(),
                  larger.varying("herd").standardDeviation()
                })
        .within(6e-5, LOOSE)
        .referenceWithin(6e-5, "the same");
    checks
        .check(example, "obs+herd: -2logL")
        .ours(() -> new double[] {-2 * larger.logLikelihoodOfCounts()});
    checks
        .check(example, "obs+herd beta")
        .ours(larger::beta)
        .within(6e-4, LOOSE)
        .referenceWithin(6e-4, "the same");
    checks
        .check(example, "LRT adding obs: chi2")
        .ours(() -> new double[] {nested.chiSquare()})
        .within(8e-4, LOOSE)
        .referenceWithin(8e-4, "the same");
    checks
        .check(example, "LRT adding obs: naive p (1 df)")
        .ours(() -> new double[] {nested.simplePValue()})
        .within(2e-6, LOOSE)
        .referenceWithin(2e-6, "the same");
    checks
        .check(example, "LRT adding obs: boundary 50:50 p")
        .ours(() -> new double[] {nested.pValue()})
        .referenceWithin(1e-6, LOOSE);
  }

  private static void addAggression(PublishedChecks checks) {
    Cells answers =
        CheckCells.of("verbagg")
            .factor("id")
            .factor("item")
            .factor("gender")
            .factor("btype")
            .factor("situ")
            .measure("anger", row -> CheckData.whole(row, "anger"))
            .count(row -> 1, row -> CheckData.whole(row, "yes"));
    TakeFit fit =
        TakeModel.ofTakes()
            .adjustFor("anger", "gender", "btype", "situ")
            .base("gender", "F")
            .base("btype", "curse")
            .base("situ", "other")
            .varyBy("id", "item")
            .fit(answers);
    String example = "verbagg_crossed";
    checks
        .check(example, "deviance Laplace, crossed (1|id)+(1|item)")
        .ours(() -> new double[] {-2 * fit.logLikelihood()});
    checks
        .check(example, "SD id, SD item; beta")
        .ours(
            () ->
                join(
                    fit.beta(),
                    fit.varying("id").standardDeviation(),
                    fit.varying("item").standardDeviation()))
        .referenceReadAs(
            "1.33970, 0.49531; 0.199065, 0.057429, 0.320717, -1.058804, -2.105390, -1.055456")
        .referenceWithin(2e-5, "glmmTMB 1.1.5; lme4's default search stops short");
  }

  static double[] join(double[] last, double... first) {
    double[] all = new double[first.length + last.length];
    System.arraycopy(first, 0, all, 0, first.length);
    System.arraycopy(last, 0, all, first.length, last.length);
    return all;
  }

  private static void addToenails(PublishedChecks checks) {
    String example = "toenail";
    Cells visits =
        CheckCells.of(example)
            .factor("patientID")
            .measure("terbinafine", row -> row.getField("treatment").equals("terbinafine") ? 1 : 0)
            .measure("month", row -> Double.parseDouble(row.getField("time")))
            .measure(
                "both",
                row ->
                    row.getField("treatment").equals("terbinafine")
                        ? Double.parseDouble(row.getField("time"))
                        : 0)
            .count(row -> 1, row -> row.getField("outcome").equals("moderate or severe") ? 1 : 0);
    TakeModel model =
        TakeModel.ofTakes().adjustFor("terbinafine", "month", "both").varyBy("patientID");
    TakeFit fifty = model.nodes(50).fit(visits);
    List<String> names = List.of("intercept", "terbinafine", "month", "interaction");
    for (int j = 0; j < names.size(); j++) {
      double value = fifty.beta()[j];
      checks
          .check(example, "AGQ " + names.get(j))
          .ours(() -> new double[] {value})
          .referenceWithin(1e-4, LOOSE);
    }
    double spread = fifty.varying("patientID").standardDeviation();
    checks.check(example, "AGQ SD").ours(() -> new double[] {spread}).referenceWithin(1e-4, LOOSE);
    checks.check(example, "nAGQ 50 logLik").ours(() -> new double[] {fifty.logLikelihood()});
    TakeFit twenty = model.nodes(20).fit(visits);
    checks
        .check(example, "nAGQ 20: intercept, trt, month, inter, SD, logLik")
        .ours(
            () -> {
              double[] beta = twenty.beta();
              return new double[] {
                beta[0],
                beta[1],
                beta[2],
                beta[3],
                twenty.varying("patientID").standardDeviation(),
                twenty.logLikelihood()
              };
            })
        .referenceWithin(2e-4, LOOSE);
  }
}
