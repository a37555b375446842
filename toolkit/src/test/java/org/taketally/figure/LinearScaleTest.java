package org.taketally.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class LinearScaleTest {

  @Test
  void places_values_and_keeps_those_beyond_at_the_ends() {
    LinearScale scale = new LinearScale(0, 1, 100, 300);

    assertThat(scale.at(0.25)).isEqualTo(150);
    assertThat(scale.at(-3)).isEqualTo(100);
    assertThat(scale.at(3)).isEqualTo(300);
  }

  @Test
  void runs_upwards_too() {
    assertThat(new LinearScale(0, 1, 300, 100).at(0.25)).isEqualTo(250);
  }

  @Test
  void ticks_are_round_and_inside() {
    assertThat(new LinearScale(0, 1, 0, 1).ticks(5)).hasSize(6).startsWith(0.0).endsWith(1.0);
    assertThat(new LinearScale(-0.13, 0.42, 0, 1).ticks(6))
        .allSatisfy(tick -> assertThat(Math.abs(tick * 10 - Math.rint(tick * 10))).isLessThan(1e-9))
        .hasSize(6);
    assertThat(new LinearScale(3, 31, 0, 1).ticks(5)).containsExactly(10.0, 20.0, 30.0);
  }

  /** Never more than asked for plus the two ends, whatever the range: all starts and widths. */
  @Test
  void never_crowds_the_axis() {
    for (int low = -50; low <= 50; low += 7) {
      for (double width = 0.003; width < 1e5; width *= 1.7) {
        assertThat(new LinearScale(low, low + width, 0, 1).ticks(5)).hasSizeBetween(1, 6);
      }
    }
  }

  @Test
  void refuses_a_scale_without_width() {
    assertThatThrownBy(() -> new LinearScale(1, 1, 0, 10))
        .hasMessage("a scale runs from low to high, got 1.0 to 1.0");
  }
}
