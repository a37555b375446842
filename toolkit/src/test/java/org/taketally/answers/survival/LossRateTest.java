package org.taketally.answers.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.taketally.terms.Interval;

class LossRateTest {

  /** Garwood's limits of a count of 5 are 1.6235 and 11.6683 (from memory). */
  @Test
  void a_rate_and_its_exact_limits_are_those_of_the_count_over_the_days() {
    LossRate rate = new LossRate(5, 200);
    assertThat(rate.perDay()).isEqualTo(0.025);
    Interval limits = rate.interval(0.95);
    assertThat(limits.low() * 200).isCloseTo(1.6235, within(1e-4));
    assertThat(limits.high() * 200).isCloseTo(11.6683, within(1e-4));
  }

  /** No loss in so many days: up to -log(0.025) = 3.689 losses would have been no surprise. */
  @Test
  void no_loss_still_has_an_upper_limit() {
    LossRate none = new LossRate(0, 100);
    assertThat(none.perDay()).isZero();
    assertThat(none.interval(0.95).low()).isZero();
    assertThat(none.interval(0.95).high() * 100).isCloseTo(-Math.log(0.025), within(1e-9));
  }

  @Test
  void no_days_give_no_rate() {
    assertThatThrownBy(() -> new LossRate(1, 0)).hasMessageContaining("more than 0 days");
    assertThatThrownBy(() -> new LossRate(-1, 10)).hasMessageContaining("0 or more losses");
  }
}
