package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * On 2 degrees of freedom F has a closed form: P(F(2, m) above f) = (1 + 2 f / m)^(-m / 2)
 * (Johnson, Kotz and Balakrishnan 1995, Continuous Univariate Distributions, chapter 27).
 */
class LevelTestTest {

  @Test
  void f_takes_chi_square_by_its_degrees() {
    LevelTest test = new LevelTest(6, 2, Math.exp(-3));
    assertThat(test.byGroups(4).pValue()).isCloseTo(0.16, within(1e-12)); // f = 3: 2.5^-2
    assertThat(test.byGroups(2).pValue()).isCloseTo(0.25, within(1e-12)); // 4^-1
    assertThat(test.byGroups(4).chiSquare()).isEqualTo(6);
    assertThat(test.byGroups(4).degrees()).isEqualTo(2);
  }

  /** Of 8 beds 6 are left: 8 * 6 / 8 = 6, f = 3 on 2 and 6: (1 + 1)^-3. */
  @Test
  void between_groups_the_statistic_keeps_the_share_of_degrees_left() {
    LevelTest test = new LevelTest(8, 2, Math.exp(-4)).between(new BetweenGroups("bed", 8, 6));
    assertThat(test.chiSquare()).isCloseTo(6, within(1e-14));
    assertThat(test.degrees()).isEqualTo(2);
    assertThat(test.pValue()).isCloseTo(0.125, within(1e-12));
  }
}
