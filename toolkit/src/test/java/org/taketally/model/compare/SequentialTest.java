package org.taketally.model.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.model.compare.Bootstrap.Comparison;
import org.taketally.model.compare.Bootstrap.Sequential;

/** When simulation has seen enough; worked out by hand. */
class SequentialTest {

  @Test
  void stops_at_as_many_as_asked_for_and_never_if_none_were() {
    assertThat(new Sequential(20, Double.NaN).stops(100, 20)).isTrue();
    assertThat(new Sequential(20, Double.NaN).stops(100, 19)).isFalse();
    assertThat(new Sequential(0, Double.NaN).stops(100, 100)).isFalse();
    assertThat(new Sequential(0, Double.NaN).stops(100, 0)).isFalse();
  }

  /**
   * Limit 0.05. None of 50: p = 1/51 = 0.0196, error 0.0196, 0.0304 away: not clear. 25 of 50: p =
   * 0.5098, error 0.0707, 0.46 away: clear. None of 400: p = 0.00249, error 0.00249, 0.0475 away:
   * clear. 14 of 99: p = 0.15, error 0.0359, 0.1 away, four errors are 0.144: not; of 999, 149: p =
   * 0.15, error 0.0113, four are 0.045: clear.
   */
  @Test
  void stops_once_the_p_value_is_clear_of_the_limit_by_four_errors() {
    Sequential limit = new Sequential(0, 0.05);
    assertThat(limit.stops(50, 0)).isFalse();
    assertThat(limit.stops(50, 25)).isTrue();
    assertThat(limit.stops(400, 0)).isTrue();
    assertThat(limit.stops(99, 14)).isFalse();
    assertThat(limit.stops(999, 149)).isTrue();
    assertThat(limit.stops(99, 4)).isFalse();
  }

  /**
   * 7 of 9: p = 8 / 10, error sqrt(0.16 / 9) = 0.133, four are 0.533: 0.55 from 0.25 is clear, 0.5
   * from 0.3 isn't. What is at its limit is never clear of it.
   */
  @Test
  void the_p_value_counts_what_was_observed_as_one_more() {
    assertThat(new Sequential(0, 0.25).stops(9, 7)).isTrue();
    assertThat(new Sequential(0, 0.3).stops(9, 7)).isFalse();
    assertThat(new Sequential(0, 1).stops(50, 50)).isFalse();
  }

  /** Both: p = 0.5 on 99 is clear of 0.5 never, but 49 are enough. */
  @Test
  void either_reason_is_enough() {
    assertThat(new Sequential(49, 0.5).stops(99, 49)).isTrue();
    assertThat(new Sequential(50, 0.5).stops(99, 49)).isFalse();
  }

  /** 0.2 * 0.8 / 100 + 0.25 / 100^2 = 0.001625; with p = 1, 0.5 / 100 alone. */
  @Test
  void the_error_of_a_p_value_never_comes_down_to_zero() {
    Comparison fifth = new Comparison(3, 100, 19, 0.2);
    assertThat(fifth.standardError()).isCloseTo(Math.sqrt(0.001625), within(1e-15));
    assertThat(new Comparison(0, 100, 100, 1).standardError()).isCloseTo(0.005, within(1e-15));
    assertThat(fifth.settles(0.03)).isTrue(); // 0.17 away, four errors are 0.161
    assertThat(fifth.settles(0.05)).isFalse();
    assertThat(fifth.settles(0.37)).isTrue();
  }
}
