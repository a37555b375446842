package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.terms.Interval;

/** Published values are in PublishedChecksTest; here are R's, the properties and the edges. */
class TakeDifferenceTest {

  private interface Method {
    Interval of(TakeCount first, TakeCount second, double level);
  }

  private static final List<Method> METHODS =
      List.of(
          TakeDifference::newcombe,
          TakeDifference::agrestiCaffo,
          TakeDifference::mee,
          TakeDifference::miettinenNurminen,
          TakeDifference::skewnessCorrected,
          TakeDifference::wald);

  private static final TakeCount FIRST = new TakeCount(41, 50);
  private static final TakeCount SECOND = new TakeCount(33, 48);

  /** Reference: R 4.2.2, src/test/r/counts.R, closed forms. */
  @Test
  void closed_forms_agree_with_r() {
    assertLimits(
        TakeDifference.newcombe(FIRST, SECOND, 0.95),
        -0.0382414895025036,
        0.2956142633831174,
        1e-14);
    assertLimits(
        TakeDifference.agrestiCaffo(FIRST, SECOND, 0.95),
        -0.0402141333505961,
        0.2955987487352115,
        1e-14);
  }

  /**
   * Reference: R 4.2.2, src/test/r/counts.R, both rates fitted by a one-dimensional search, which
   * finds them to the square root of a double's precision only.
   */
  @Test
  void score_limits_agree_with_a_plain_search_in_r() {
    assertLimits(
        TakeDifference.mee(FIRST, SECOND, 0.95), -0.0384926943053706, 0.3004958085947272, 5e-8);
    assertLimits(
        TakeDifference.miettinenNurminen(FIRST, SECOND, 0.95),
        -0.0393882833533379,
        0.3013475342113015,
        5e-8);
  }

  private static void assertLimits(Interval interval, double low, double high, double tolerance) {
    assertThat(interval.low()).isCloseTo(low, within(tolerance));
    assertThat(interval.high()).isCloseTo(high, within(tolerance));
  }

  /** All pairs of counts of two unequal lots: order, the counted difference inside, mirror. */
  @Test
  void every_pair_of_counts_of_two_small_lots() {
    for (Method method : METHODS) {
      for (int x1 = 0; x1 <= 7; x1++) {
        for (int x2 = 0; x2 <= 12; x2++) {
          Interval there = method.of(new TakeCount(x1, 7), new TakeCount(x2, 12), 0.9);
          Interval back = method.of(new TakeCount(x2, 12), new TakeCount(x1, 7), 0.9);
          assertThat(back.low()).isCloseTo(-there.high(), within(1e-9));
          Interval failures = method.of(new TakeCount(7 - x1, 7), new TakeCount(12 - x2, 12), 0.9);
          assertThat(failures.low()).isCloseTo(-there.high(), within(1e-9));
        }
      }
    }
  }

  @Test
  void score_intervals_hold_the_counted_difference_and_stay_on_the_scale() {
    for (Method method : List.of(METHODS.get(0), METHODS.get(2), METHODS.get(3), METHODS.get(4))) {
      for (int x1 = 0; x1 <= 7; x1++) {
        for (int x2 = 0; x2 <= 12; x2++) {
          Interval interval = method.of(new TakeCount(x1, 7), new TakeCount(x2, 12), 0.95);
          assertThat(interval.contains(x1 / 7.0 - x2 / 12.0)).isTrue();
          assertThat(interval.low()).isGreaterThanOrEqualTo(-1);
          assertThat(interval.high()).isLessThanOrEqualTo(1);
          assertThat(interval.width()).isGreaterThan(0.1);
        }
      }
    }
  }

  /** The rates fitted under a supposed difference leave no slope of the likelihood. */
  @Test
  void score_is_zero_at_the_counted_difference_and_falls() {
    DifferenceScore score = new DifferenceScore(FIRST, SECOND);
    assertThat(score.at(score.difference())).isZero();
    double before = Double.POSITIVE_INFINITY;
    for (double delta = -0.95; delta < 0.96; delta += 0.05) {
      assertThat(score.at(delta)).isLessThan(before);
      before = score.at(delta);
    }
  }

  @Test
  void all_against_none_reaches_the_end_of_the_scale() {
    Interval interval =
        TakeDifference.miettinenNurminen(new TakeCount(9, 9), new TakeCount(0, 8), 0.95);
    assertThat(interval.high()).isEqualTo(1);
    assertThat(interval.low()).isBetween(0.5, 0.9);
  }

  @Test
  void refuses_a_lot_without_grafts() {
    for (Method method : METHODS) {
      assertThatThrownBy(() -> method.of(new TakeCount(0, 0), SECOND, 0.95))
          .hasMessage("grafts must be at least 1, got 0");
      assertThatThrownBy(() -> method.of(FIRST, SECOND, 1))
          .hasMessage("coverage must lie between 0 and 1, e.g. 0.95, got 1.0");
    }
  }
}
