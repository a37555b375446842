package org.taketally.model.numeric;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NumberingTest {

  /** Far more keys than there is room for at first, negative ones and multiples of 2^32 among. */
  @Test
  void keys_are_numbered_in_order_of_first_sight_however_many_there_are() {
    Numbering numbering = new Numbering();
    long[] steps = {1, 1L << 32, -7};
    int expected = 0;
    for (long step : steps) {
      for (int i = 1; i <= 3_000; i++) {
        assertThat(numbering.number(i * step)).isEqualTo(expected++);
      }
    }
    assertThat(numbering.number(0)).isEqualTo(9_000);
    assertThat(numbering.count()).isEqualTo(9_001);
    for (int i = 1; i <= 3_000; i++) {
      assertThat(numbering.number(i)).isEqualTo(i - 1);
      assertThat(numbering.number(-7L * i)).isEqualTo(5_999 + i);
    }
    assertThat(numbering.count()).isEqualTo(9_001);
  }
}
