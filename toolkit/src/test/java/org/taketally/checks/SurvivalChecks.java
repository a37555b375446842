package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.taketally.answers.survival.FollowUp;
import org.taketally.answers.survival.HazardRatio;
import org.taketally.answers.survival.HazardRatio.Ties;
import org.taketally.answers.survival.LikelyHazardRatio;
import org.taketally.answers.survival.LogRank;
import org.taketally.answers.survival.LossRate;
import org.taketally.answers.survival.LossTimes;
import org.taketally.answers.survival.SurvivalCurve;
import org.taketally.answers.survival.Watched;

/** Time to relapse of leukaemia patients on 6-mercaptopurine or placebo (Freireich et al. 1963). */
final class SurvivalChecks implements CheckSource {

  private static final String EXAMPLE = "leukaemia_6mp";
  private static final List<FollowUp> TREATED = patients("6MP");
  private static final List<FollowUp> PLACEBO = patients("placebo");
  private static final List<Watched> PLACEBO_AGAINST_TREATED =
      List.of(Watched.of("placebo", PLACEBO), Watched.of("6-MP", TREATED));

  @Override
  public void addTo(PublishedChecks checks) {
    addCurves(checks);
    addTests(checks);
    addHazardRatios(checks);
    addRates(checks);
  }

  private static void addCurves(PublishedChecks checks) {
    SurvivalCurve treated = SurvivalCurve.of(TREATED, 0.95);
    SurvivalCurve placebo = SurvivalCurve.of(PLACEBO, 0.95);
    checks
        .check(EXAMPLE, "KM 6-MP at 6,7,10,13,16,22,23")
        .ours(() -> steps(treated, SurvivalCurve.Step::alive));
    checks
        .check(EXAMPLE, "Greenwood SE at 6..23")
        .ours(() -> steps(treated, SurvivalCurve.Step::standardError));
    checks
        .check(EXAMPLE, "median placebo, 6-MP")
        .ours(() -> new double[] {placebo.median().orElseThrow(), treated.median().orElseThrow()});
    checks
        .check(EXAMPLE, "events, total weeks")
        .ours(
            () -> {
              LossRate all =
                  LossRate.of(Stream.concat(TREATED.stream(), PLACEBO.stream()).toList());
              return new double[] {all.lost(), all.graftDays()};
            });
  }

  private static double[] steps(SurvivalCurve curve, ToDoubleFunction<SurvivalCurve.Step> value) {
    return curve.steps().stream().mapToDouble(value).toArray();
  }

  private static void addTests(PublishedChecks checks) {
    checks
        .check(EXAMPLE, "log-rank chi2")
        .ours(
            () ->
                new double[] {
                  LogRank.of(PLACEBO_AGAINST_TREATED).test().orElseThrow().statistic()
                });
    checks
        .check(EXAMPLE, "expected events 6-MP, placebo")
        .ours(
            () -> {
              List<LogRank.Group> groups = LogRank.of(PLACEBO_AGAINST_TREATED).groups();
              return new double[] {groups.get(1).expected(), groups.get(0).expected()};
            });
    checks
        .check(EXAMPLE, "Peto-Peto (rho=1) chi2")
        .ours(
            () ->
                new double[] {
                  LogRank.of(PLACEBO_AGAINST_TREATED, LogRank.Weights.EARLY_MORE)
                      .test()
                      .orElseThrow()
                      .statistic()
                });
  }

  private static void addHazardRatios(PublishedChecks checks) {
    addHazardRatio(checks, "Cox beta Breslow ties (SE)", Ties.BRESLOW);
    addHazardRatio(checks, "Cox beta Efron (SE)", Ties.EFRON);
    addHazardRatio(checks, "Cox beta exact (SE)", Ties.DISCRETE);
    checks
        .check(EXAMPLE, "Cox LR/score/Wald Efron")
        .ours(
            () -> {
              HazardRatio efron = HazardRatio.of(PLACEBO_AGAINST_TREATED, Ties.EFRON);
              return new double[] {
                efron.likelihoodRatio().statistic(),
                efron.score().statistic(),
                efron.wald().statistic()
              };
            });
    checks
        .check(EXAMPLE, "Bayesian Cox beta mean (SD), 95%")
        .ours(
            () -> {
              LikelyHazardRatio likely = LikelyHazardRatio.of(PLACEBO_AGAINST_TREATED, 1000, 0.95);
              return new double[] {
                likely.logRatio(),
                likely.logRatioSd(),
                Math.log(likely.interval().low()),
                Math.log(likely.interval().high())
              };
            })
        .within(
            0.045,
            "printed from a chain of draws; its own model's posterior, summed exactly, is 1.541"
                + " (0.4183), 0.750 to 2.393")
        .withoutReference("no other program was run");
  }

  private static void addHazardRatio(PublishedChecks checks, String quantity, Ties ties) {
    checks
        .check(EXAMPLE, quantity)
        .ours(
            () -> {
              HazardRatio ratio = HazardRatio.of(PLACEBO_AGAINST_TREATED, ties);
              return new double[] {ratio.logRatio(), ratio.standardError()};
            });
  }

  private static void addRates(PublishedChecks checks) {
    checks
        .check(EXAMPLE, "exponential intercept, placebo")
        .ours(
            () -> {
              double treated = -Math.log(LossRate.of(TREATED).perDay());
              return new double[] {treated, -Math.log(LossRate.of(PLACEBO).perDay()) - treated};
            });
    checks
        .check(EXAMPLE, "Weibull AFT intercept, placebo, log scale")
        .ours(
            () -> {
              LossTimes times = LossTimes.of(PLACEBO_AGAINST_TREATED);
              double placebo = Math.log(times.lots().get(0).scaleDays());
              double treated = Math.log(times.lots().get(1).scaleDays());
              return new double[] {treated, placebo - treated, -Math.log(times.shape())};
            });
  }

  private static List<FollowUp> patients(String treatment) {
    return CheckData.rows("leukaemia_6mp.csv").stream()
        .filter(row -> row.getField("treat").equals(treatment))
        .map(SurvivalChecks::patient)
        .toList();
  }

  private static FollowUp patient(NamedCsvRecord row) {
    return new FollowUp(CheckData.whole(row, "time"), CheckData.whole(row, "status") == 1, 1);
  }
}
