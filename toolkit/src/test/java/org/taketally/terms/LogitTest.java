package org.taketally.terms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LogitTest {

  /** By hand: odds of 1 to 3 are log(1/3) logits. */
  @Test
  void goes_there_and_back() {
    assertThat(Logit.of(0.25)).isCloseTo(-Math.log(3), within(1e-15));
    for (double take = 0.001; take < 1; take += 0.001) {
      assertThat(Logit.take(Logit.of(take))).isCloseTo(take, within(1e-14));
      assertThat(Logit.takeAlikeEverywhere(Logit.of(take))).isCloseTo(take, within(1e-14));
      assertThat(Logit.takes(40, Logit.of(take))).isCloseTo(40 * take, within(1e-12));
      assertThat(Logit.minusLogFailure(Logit.of(take)))
          .isCloseTo(-Math.log(1 - take), within(1e-12));
    }
  }

  @Test
  void does_not_overflow() {
    assertThat(Logit.take(-800)).isZero();
    assertThat(Logit.take(800)).isEqualTo(1);
    assertThat(Logit.minusLogFailure(800)).isEqualTo(800);
    assertThat(Logit.minusLogFailure(-800)).isZero();
  }
}
