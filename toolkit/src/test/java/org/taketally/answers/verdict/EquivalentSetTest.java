package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class EquivalentSetTest {

  @Test
  void all_levels_where_every_pair_is_equivalent() {
    assertThat(EquivalentSet.largest(pairs(4, "01 02 03 12 13 23"), new long[] {5, 5, 5, 5}))
        .containsExactly(0, 1, 2, 3);
  }

  @Test
  void the_largest_set_and_of_equals_the_one_with_most_grafts() {
    assertThat(EquivalentSet.largest(pairs(5, "01 12 02 34"), new long[] {1, 1, 1, 90, 90}))
        .containsExactly(0, 1, 2);
    assertThat(EquivalentSet.largest(pairs(4, "01 23"), new long[] {10, 10, 30, 1}))
        .containsExactly(2, 3);
  }

  @Test
  void none_where_no_two_are_equivalent() {
    assertThat(EquivalentSet.largest(pairs(3, ""), new long[] {1, 1, 1})).isEmpty();
  }

  /** Against looking at every subset, 300 seeded tables of up to 9 levels. */
  @Test
  void is_as_large_as_any_set() {
    for (int seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      int levels = 2 + random.nextInt(8);
      boolean[][] pairs = new boolean[levels][levels];
      for (int a = 0; a < levels; a++) {
        for (int b = 0; b < a; b++) {
          pairs[a][b] = pairs[b][a] = random.nextDouble() < 0.6;
        }
      }
      int largest = 0;
      for (int set = 0; set < 1 << levels; set++) {
        largest = Math.max(largest, isEquivalent(pairs, set) ? Integer.bitCount(set) : 0);
      }
      int found = EquivalentSet.largest(pairs, new long[levels]).length;
      assertThat(found).as("seed %d", seed).isEqualTo(largest < 2 ? 0 : largest);
    }
  }

  private static boolean isEquivalent(boolean[][] pairs, int set) {
    for (int a = 0; a < pairs.length; a++) {
      for (int b = 0; b < a; b++) {
        if (((set >> a) & 1) == 1 && ((set >> b) & 1) == 1 && !pairs[a][b]) {
          return false;
        }
      }
    }
    return true;
  }

  static boolean[][] pairs(int levels, String which) {
    boolean[][] pairs = new boolean[levels][levels];
    for (String pair : which.isEmpty() ? new String[0] : which.split(" ")) {
      int a = pair.charAt(0) - '0';
      int b = pair.charAt(1) - '0';
      pairs[a][b] = pairs[b][a] = true;
    }
    return pairs;
  }
}
