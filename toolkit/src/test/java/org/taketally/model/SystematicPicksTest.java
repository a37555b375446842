package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Worked out by hand. */
class SystematicPicksTest {

  private static SystematicPicks of(double... weights) {
    double[] logs = new double[weights.length];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(weights[i]) + 1_000;
    }
    return SystematicPicks.of(logs);
  }

  /** (1 + 2 + 1)^2 / (1 + 4 + 1). */
  @Test
  void effective_number_is_kish_s() {
    assertThat(of(1, 2, 1).effective()).isCloseTo(16 / 6.0, within(1e-10));
    assertThat(of(3, 3, 3, 3).effective()).isCloseTo(4, within(1e-10));
    assertThat(of(1, 1e-30).effective()).isCloseTo(1, within(1e-10));
  }

  @Test
  void each_is_picked_as_often_as_its_share() {
    assertThat(of(1, 2, 1).numbers(4, 0.5)).containsExactly(0, 1, 1, 2);
    assertThat(of(1, 2, 1).numbers(8, 0.5)).containsExactly(0, 0, 1, 1, 1, 1, 2, 2);
    assertThat(of(6, 1, 1).numbers(4, 0.9)).containsExactly(0, 0, 0, 2);
    assertThat(of(6, 1, 1).numbers(4, 0.4)).containsExactly(0, 0, 0, 1);
  }

  @Test
  void weights_alike_are_picked_once_each_wherever_the_stretch_begins() {
    for (double start : new double[] {0, 0.3, 0.999_999}) {
      assertThat(of(1, 1, 1, 1).numbers(4, start)).containsExactly(0, 1, 2, 3);
    }
  }
}
