package org.taketally.answers.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.answers.survival.HazardRatio.Ties;
import org.taketally.answers.survival.HazardRegression.Coefficient;
import org.taketally.answers.survival.HazardRegression.Exposure;
import org.taketally.terms.Interval;

/**
 * Published values are in PublishedChecksTest; here are R's (src/test/r/counts.R) and the edges.
 */
class SurvivalTest {

  private static FollowUp lost(double days, long grafts) {
    return new FollowUp(days, true, grafts);
  }

  private static FollowUp alive(double days, long grafts) {
    return new FollowUp(days, false, grafts);
  }

  /** Three rootstocks within two cultivars, as in counts.R. */
  private static final List<Watched> LOTS =
      List.of(
          new Watched(
              "A", "Orrin", List.of(lost(60, 3), lost(120, 1), alive(120, 4), alive(360, 12))),
          new Watched(
              "B", "Orrin", List.of(lost(60, 1), alive(200, 2), lost(360, 1), alive(360, 9))),
          new Watched("C", "Orrin", List.of(lost(60, 6), lost(120, 5), alive(360, 3))),
          new Watched("A", "Talla", List.of(lost(60, 2), alive(360, 10))),
          new Watched("B", "Talla", List.of(lost(120, 4), alive(360, 8))),
          new Watched("C", "Talla", List.of(lost(90, 3), alive(360, 7))));

  private static List<FollowUp> all(List<Watched> lots) {
    return lots.stream().flatMap(lot -> lot.grafts().stream()).toList();
  }

  private static List<Watched> withoutStrata() {
    return LOTS.stream().map(lot -> Watched.of(lot.name(), lot.grafts())).toList();
  }

  /** Reference: R 4.2.2, survival 3.5, survfit with conf.type = "log-log". */
  @Test
  void curve_and_limits_agree_with_r() {
    SurvivalCurve curve = SurvivalCurve.of(all(LOTS), 0.95);
    double[] alive = {
      0.8518518518518519, 0.8148148148148149, 0.6913580246913581, 0.677530864197531
    };
    double[] error = {
      0.0394718643894051, 0.0431608579493890, 0.0513258900792036, 0.0521286237253409
    };
    double[] low = {0.7538894646582360, 0.7117687888802033, 0.5784193340996977, 0.5635660097870244};
    double[] high = {
      0.9130131893329110, 0.8839503620326421, 0.7796991024283854, 0.7677615391441673
    };
    assertThat(curve.steps())
        .extracting(SurvivalCurve.Step::days)
        .containsExactly(60.0, 90.0, 120.0, 360.0);
    for (int i = 0; i < alive.length; i++) {
      SurvivalCurve.Step step = curve.steps().get(i);
      assertThat(step.alive()).isCloseTo(alive[i], within(1e-14));
      assertThat(step.standardError()).isCloseTo(error[i], within(1e-14));
      assertThat(step.interval().low()).isCloseTo(low[i], within(1e-13));
      assertThat(step.interval().high()).isCloseTo(high[i], within(1e-13));
    }
    assertThat(curve.grafts()).isEqualTo(81);
    assertThat(curve.lost()).isEqualTo(26);
  }

  /** Reference: R 4.2.2, quantile of the same curve for stock C. */
  @Test
  void median_and_its_limits_agree_with_r() {
    SurvivalCurve curve =
        SurvivalCurve.of(all(LOTS.stream().filter(lot -> lot.name().equals("C")).toList()), 0.95);
    assertThat(curve.median()).hasValue(120);
    assertThat(curve.medianLow()).hasValue(90);
    assertThat(curve.medianHigh()).isEmpty();
  }

  @Test
  void curve_stands_between_looks_and_ends_with_the_last() {
    SurvivalCurve curve = SurvivalCurve.of(all(LOTS), 0.95);
    SurvivalCurve.Step between = curve.at(100);
    assertThat(between.alive()).isEqualTo(curve.steps().get(1).alive());
    assertThat(between.atRisk()).isEqualTo(66);
    assertThat(between.lost()).isZero();
    assertThat(curve.at(30).alive()).isEqualTo(1);
    // nothing lost yet says what Wilson says of 81 of 81
    assertThat(curve.at(30).interval()).isEqualTo(TakeRateInterval.wilson(81, 81, 0.95));
    assertThatThrownBy(() -> curve.at(400))
        .hasMessage("these grafts were looked at up to day 360.0, asked about day 400.0");
  }

  @Test
  void all_lost_keeps_an_upper_limit() {
    SurvivalCurve curve = SurvivalCurve.of(List.of(lost(10, 3), lost(20, 2)), 0.95);
    assertThat(curve.steps().get(1).alive()).isZero();
    assertThat(curve.steps().get(1).standardError()).isNaN();
    assertThat(curve.steps().get(1).interval())
        .isEqualTo(new Interval(0, curve.steps().get(0).interval().high(), 0.95));
    SurvivalCurve atOnce = SurvivalCurve.of(List.of(lost(10, 5)), 0.95);
    assertThat(atOnce.steps().get(0).interval()).isEqualTo(TakeRateInterval.wilson(0, 5, 0.95));
  }

  /** With no graft leaving early the curve is the counted share. */
  @Test
  void without_leaving_early_it_is_the_counted_share() {
    SurvivalCurve curve = SurvivalCurve.of(List.of(lost(5, 3), lost(9, 4), alive(50, 13)), 0.95);
    assertThat(curve.at(50).alive()).isCloseTo(0.65, within(1e-15));
    assertThat(curve.at(50).standardError())
        .isCloseTo(new TakeCount(13, 20).standardError(), within(1e-15));
  }

  /** Reference: R 4.2.2, survival 3.5, survdiff. */
  @Test
  void log_rank_agrees_with_r() {
    LogRank plain = LogRank.of(withoutStrata());
    assertThat(plain.test().orElseThrow().statistic()).isCloseTo(11.8311433762067, within(1e-11));
    assertThat(plain.test().orElseThrow().degreesOfFreedom()).isEqualTo(2);
    LogRank within = LogRank.of(LOTS);
    assertThat(within.test().orElseThrow().statistic()).isCloseTo(11.7994776097409, within(1e-11));
    assertThat(within.groups()).extracting(LogRank.Group::lost).containsExactly(6L, 6L, 14L);
    double[] expected = {10.51476860346169, 8.59795815948874, 6.88727323704958};
    for (int i = 0; i < 3; i++) {
      assertThat(within.groups().get(i).expected()).isCloseTo(expected[i], within(1e-12));
    }
    assertThat(LogRank.of(LOTS, LogRank.Weights.EARLY_MORE).test().orElseThrow().statistic())
        .isCloseTo(11.0867626231541, within(1e-11));
  }

  @Test
  void lots_never_watched_together_are_not_compared() {
    List<Watched> apart =
        List.of(
            new Watched("A", "Orrin", List.of(lost(60, 3), alive(90, 5))),
            new Watched("B", "Talla", List.of(lost(60, 1), alive(90, 9))));
    assertThat(LogRank.of(apart).test()).isEmpty();
    assertThatThrownBy(() -> LogRank.of(LOTS.subList(0, 1)))
        .hasMessage("a comparison needs at least two lots, got [A]");
  }

  /** Reference: R 4.2.2, survival 3.5, coxph with strata, C against A. */
  @Test
  void hazard_ratio_agrees_with_r() {
    List<Watched> two = Stream.of(LOTS.get(2), LOTS.get(0), LOTS.get(5), LOTS.get(3)).toList();
    assertRatio(HazardRatio.of(two, Ties.BRESLOW), 1.265449168637631, 0.491393055675111);
    assertRatio(HazardRatio.of(two, Ties.EFRON), 1.452757171412107, 0.495931397623248);
    assertRatio(HazardRatio.of(two, Ties.DISCRETE), 1.601880719644148, 0.554172976813075);
  }

  private static void assertRatio(HazardRatio ratio, double log, double error) {
    assertThat(ratio.logRatio()).isCloseTo(log, within(1e-9));
    assertThat(ratio.standardError()).isCloseTo(error, within(1e-9));
    assertThat(ratio.interval(0.95).contains(ratio.ratio())).isTrue();
  }

  @Test
  void hazard_ratio_refuses_one_sided_losses() {
    List<Watched> none =
        List.of(
            Watched.of("A", List.of(alive(90, 5))),
            Watched.of("B", List.of(lost(60, 1), alive(90, 9))));
    assertThatThrownBy(() -> HazardRatio.of(none, Ties.EFRON))
        .isInstanceOf(ArithmeticException.class)
        .hasMessage("no hazard ratio: while both were watched, 0 of A and 1 of B were lost");
    assertThatThrownBy(() -> HazardRatio.of(LOTS, Ties.EFRON))
        .hasMessage("a hazard ratio needs two lots, got [A, B, C]");
  }

  /** Reference: R 4.2.2, poisson.test(7, 520)$conf.int. */
  @Test
  void loss_rate_agrees_with_r() {
    Interval interval = new LossRate(7, 520).interval(0.95);
    assertThat(interval.low()).isCloseTo(0.00541223663753821, within(1e-12));
    assertThat(interval.high()).isCloseTo(0.02773591415711996, within(1e-12));
    assertThat(new LossRate(0, 520).interval(0.95).low()).isZero();
    assertThat(LossRate.of(List.of(lost(10, 2), alive(30, 3)))).isEqualTo(new LossRate(2, 110));
    assertThatThrownBy(() -> LossRate.of(List.of(alive(0, 3))))
        .hasMessage("a rate needs 0 or more losses over more than 0 days, got 0 over 0.0");
  }

  private static List<Exposure> byPeriod(List<Watched> lots, Periods periods) {
    List<Exposure> exposures = new ArrayList<>();
    for (Watched lot : lots) {
      exposures.addAll(
          periods.exposures(
              lot.grafts(),
              lot.name().equals("B") ? 1 : 0,
              lot.name().equals("C") ? 1 : 0,
              lot.stratum().equals("Talla") ? 1 : 0));
    }
    return exposures;
  }

  /**
   * Reference: R 4.2.2, glm with binomial("cloglog") over graft-periods, standard errors from
   * optimHess, whose differences leave 1e-6.
   */
  @Test
  void grouped_time_hazards_agree_with_r() {
    Periods periods = new Periods(List.of(60.0, 120.0, 360.0));
    HazardRegression fit =
        HazardRegressionCalculator.of(byPeriod(LOTS, periods), List.of("B", "C", "Talla"));
    double[] value = {0.239834667836540, 1.478969629059317, -0.623383881080774};
    double[] error = {0.578410579591968, 0.496464163659561, 0.419265243369478};
    for (int j = 0; j < 3; j++) {
      Coefficient coefficient = fit.coefficients().get(j);
      assertThat(coefficient.value()).isCloseTo(value[j], within(1e-7));
      assertThat(coefficient.standardError()).isCloseTo(error[j], within(1e-5));
      assertThat(coefficient.interval(0.95).contains(coefficient.ratio())).isTrue();
    }
    assertThat(fit.logLikelihood()).isCloseTo(-66.00350833829681, within(1e-10));
  }

  /** Periods in which none was lost, or all, change nothing. */
  @Test
  void silent_periods_drop_out() {
    List<Exposure> exposures =
        new ArrayList<>(byPeriod(LOTS, new Periods(List.of(60.0, 120.0, 360.0))));
    HazardRegression before = HazardRegressionCalculator.of(exposures, List.of("B", "C", "Talla"));
    exposures.add(new Exposure(7, new double[] {1, 0, 0}, 5, 0));
    exposures.add(new Exposure(8, new double[] {0, 1, 0}, 4, 4));
    assertThat(HazardRegressionCalculator.of(exposures, List.of("B", "C", "Talla")))
        .isEqualTo(before);
  }

  @Test
  void hazards_that_cannot_be_told_are_refused() {
    Periods periods = new Periods(List.of(60.0, 120.0));
    List<Exposure> never =
        new ArrayList<>(periods.exposures(List.of(lost(60, 3), alive(120, 9)), 0));
    never.addAll(periods.exposures(List.of(alive(120, 9)), 1));
    assertThatThrownBy(() -> HazardRegressionCalculator.of(never, List.of("B")))
        .isInstanceOf(ArithmeticException.class)
        .hasMessage("no hazard ratio for B: on one side of it no graft was lost, or all were");

    List<Exposure> same =
        new ArrayList<>(periods.exposures(List.of(lost(60, 3), alive(120, 9)), 0, 0));
    same.addAll(periods.exposures(List.of(lost(60, 5), alive(120, 9)), 1, 2));
    assertThatThrownBy(() -> HazardRegressionCalculator.of(same, List.of("B", "twice B")))
        .isInstanceOf(ArithmeticException.class)
        .hasMessage("no hazard ratios: some of [B, twice B] say the same about these grafts");

    assertThatThrownBy(
            () ->
                HazardRegressionCalculator.of(periods.exposures(List.of(alive(120, 9))), List.of()))
        .hasMessage("no graft was lost, so there is no hazard to compare");
    assertThatThrownBy(() -> HazardRegressionCalculator.of(never, List.of("B", "C")))
        .hasMessage("expected 2 values ([B, C]), got 1");
  }

  @Test
  void a_graft_counts_for_the_periods_it_went_through() {
    Periods periods = new Periods(List.of(60.0, 120.0));
    List<FollowUp> grafts =
        List.of(alive(59, 1), alive(60, 10), lost(61, 100), lost(60, 1000), alive(500, 10_000));
    List<Exposure> exposures = periods.exposures(grafts);
    assertThat(exposures.get(0).atRisk()).isEqualTo(11_110);
    assertThat(exposures.get(0).lost()).isEqualTo(1000);
    assertThat(exposures.get(1).atRisk()).isEqualTo(10_100);
    assertThat(exposures.get(1).lost()).isEqualTo(100);
    assertThatThrownBy(() -> periods.exposures(List.of(lost(121, 1))))
        .hasMessage("a graft was lost on day 121.0, after the last period (day 120.0)");
    assertThatThrownBy(() -> new Periods(List.of(60.0, 60.0)))
        .hasMessage("period ends must rise from above 0, got [60.0, 60.0]");
  }

  @Test
  void periods_share_the_losses_out() {
    List<FollowUp> grafts =
        List.of(lost(10, 2), lost(20, 2), lost(30, 2), lost(40, 2), alive(90, 5), lost(0, 1));
    assertThat(Periods.fromLosses(grafts, 4).ends()).containsExactly(10.0, 20.0, 30.0, 40.0);
    assertThat(Periods.fromLosses(grafts, 2).ends()).containsExactly(20.0, 40.0);
    assertThat(Periods.fromLosses(grafts, 3).ends()).containsExactly(20.0, 30.0, 40.0);
    assertThat(Periods.fromLosses(grafts, 1).ends()).containsExactly(40.0);
  }
}
