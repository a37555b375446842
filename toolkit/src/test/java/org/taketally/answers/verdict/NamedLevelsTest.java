package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NamedLevelsTest {

  @Test
  void the_one_level_that_lies_below_the_others() {
    assertThat(NamedLevels.of(above(4, "02 12 32"))).containsExactly(2);
  }

  @Test
  void the_one_level_that_lies_above_the_others() {
    assertThat(NamedLevels.of(above(4, "10 12 13"))).containsExactly(1);
  }

  @Test
  void of_a_single_pair_the_lower_level() {
    assertThat(NamedLevels.of(above(4, "03"))).containsExactly(3);
    assertThat(NamedLevels.of(above(2, "10"))).containsExactly(0);
  }

  @Test
  void two_levels_where_one_does_not_account_for_all_pairs() {
    assertThat(NamedLevels.of(above(5, "01 21 03 23 43"))).containsExactly(3, 1);
  }

  @Test
  void nobody_where_no_pair_differs() {
    assertThat(NamedLevels.of(above(3, ""))).isEmpty();
  }

  private static boolean[][] above(int levels, String which) {
    boolean[][] above = new boolean[levels][levels];
    for (String pair : which.isEmpty() ? new String[0] : which.split(" ")) {
      above[pair.charAt(0) - '0'][pair.charAt(1) - '0'] = true;
    }
    return above;
  }
}
