package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.taketally.terms.Interval;

/** Published values are in PublishedChecksTest; here are the properties and the edges. */
class TakeRateIntervalTest {

  private interface Method {
    Interval of(long takes, long grafts, double level);
  }

  private static final List<Method> METHODS =
      List.of(
          TakeRateInterval::wilson,
          TakeRateInterval::wilsonWithContinuity,
          TakeRateInterval::clopperPearson,
          TakeRateInterval::jeffreys,
          TakeRateInterval::agrestiCoull,
          TakeRateInterval::wald);

  /** Reference: R 4.2.2, prop.test(41, 50, correct = FALSE)$conf.int, 15 digits. */
  @Test
  void wilson_agrees_with_r() {
    Interval interval = TakeRateInterval.wilson(41, 50, 0.95);
    assertThat(interval.low()).isCloseTo(0.692039463256992, within(1e-14));
    assertThat(interval.high()).isCloseTo(0.902298073297658, within(1e-14));
  }

  /** Reference: R 4.2.2, qbeta(c(0.025, 0.975), 41.5, 9.5), 15 digits. */
  @Test
  void jeffreys_agrees_with_r() {
    Interval interval = TakeRateInterval.jeffreys(41, 50, 0.95);
    assertThat(interval.low()).isCloseTo(0.697195221807379, within(1e-12));
    assertThat(interval.high()).isCloseTo(0.907023890010906, within(1e-12));
  }

  /** Counting failures instead of takes mirrors the interval: every count up to 60 grafts. */
  @Test
  void mirrors_when_takes_and_failures_swap() {
    for (Method method : METHODS) {
      for (int grafts = 1; grafts <= 60; grafts++) {
        for (int takes = 0; takes <= grafts; takes++) {
          Interval takeSide = method.of(takes, grafts, 0.9);
          Interval failureSide = method.of(grafts - takes, grafts, 0.9);
          // two roundings of a difference from 1; the beta quantiles stop at 1e-9 relative
          assertThat(takeSide.low()).isCloseTo(1 - failureSide.high(), within(1e-9));
        }
      }
    }
  }

  @Test
  void holds_the_counted_take_and_stays_within_0_and_1() {
    for (Method method : METHODS.subList(0, 4)) {
      for (int takes = 0; takes <= 25; takes++) {
        Interval interval = method.of(takes, 25, 0.95);
        assertThat(interval.contains(takes / 25.0)).isTrue();
        assertThat(interval.low()).isBetween(0.0, 1.0);
        assertThat(interval.high()).isBetween(0.0, 1.0);
      }
    }
  }

  /** By definition: at each limit, a result this extreme has chance (1 - level) / 2. */
  @Test
  void clopper_pearson_solves_its_own_definition() {
    Interval interval = TakeRateInterval.clopperPearson(7, 31, 0.95);
    assertThat(BinomialDistribution.of(31, interval.low()).survivalProbability(6))
        .isCloseTo(0.025, within(1e-9));
    assertThat(BinomialDistribution.of(31, interval.high()).cumulativeProbability(7))
        .isCloseTo(0.025, within(1e-9));
  }

  @Test
  void none_or_all_taken_still_say_how_sure() {
    assertThat(TakeRateInterval.wilson(0, 12, 0.95).low()).isZero();
    assertThat(TakeRateInterval.wilson(12, 12, 0.95).high()).isEqualTo(1);
    // by hand: 1 - 0.025^(1/12)
    assertThat(TakeRateInterval.clopperPearson(0, 12, 0.95).high())
        .isCloseTo(1 - Math.pow(0.025, 1.0 / 12), within(1e-12));
  }

  @Test
  void refuses_impossible_counts_and_levels() {
    for (Method method : METHODS) {
      assertThatThrownBy(() -> method.of(14, 12, 0.95))
          .hasMessage("takes must be 0 to 12 (grafts), got 14");
      assertThatThrownBy(() -> method.of(0, 0, 0.95))
          .hasMessage("grafts must be at least 1, got 0");
      assertThatThrownBy(() -> method.of(3, 12, Double.NaN))
          .hasMessage("coverage must lie between 0 and 1, e.g. 0.95, got NaN");
      assertThatThrownBy(() -> method.of(3, 12, 95))
          .hasMessage("coverage must lie between 0 and 1, e.g. 0.95, got 95.0");
    }
  }
}
