package org.taketally.plan.order;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;

/** Sticks there are, which all lines of a cultivar share, however they write its name. */
final class SharedSticks {

  private final Map<String, Integer> left = new HashMap<>();

  /** What a cultivar is called: case and blanks make no other cultivar. */
  static String plain(String cultivar) {
    return cultivar.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  /** So many there are, in place of what was said before. */
  void there(String cultivar, int sticks) {
    left.put(plain(cultivar), sticks);
  }

  /** What is left; empty if nobody said what there is. */
  OptionalInt left(String cultivar) {
    Integer sticks = left.get(plain(cultivar));
    return sticks == null ? OptionalInt.empty() : OptionalInt.of(sticks);
  }

  /** Takes some of what is left; nothing where nobody said what there is. */
  void use(String cultivar, int sticks) {
    left.computeIfPresent(plain(cultivar), (name, n) -> n - sticks);
  }
}
