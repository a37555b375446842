package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/** Keeps a long list readable: both ends stay, and the cut is said. */
final class LongList {

  private static final int MOST = 40;
  private static final int FIRST = 20;
  private static final int LAST = 10;

  private LongList() {}

  /**
   * The lines, or the first and last of them around a gap that says how many are missing.
   *
   * @param lines in order
   * @param gap says that so many are left out
   */
  static List<Line> cut(List<? extends Line> lines, IntFunction<String> gap) {
    if (lines.size() <= MOST) {
      return List.copyOf(lines);
    }
    List<Line> kept = new ArrayList<>(lines.subList(0, FIRST));
    int left = lines.size() - FIRST - LAST;
    kept.add(new Line.Gap(gap.apply(left)));
    kept.addAll(lines.subList(lines.size() - LAST, lines.size()));
    return kept;
  }
}
