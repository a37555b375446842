package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;

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
   * @param things what the lines are, in the plural
   */
  static List<Line> cut(List<? extends Line> lines, String things) {
    if (lines.size() <= MOST) {
      return List.copyOf(lines);
    }
    List<Line> kept = new ArrayList<>(lines.subList(0, FIRST));
    int left = lines.size() - FIRST - LAST;
    kept.add(new Line.Gap("%,d %s between are in the table".formatted(left, things)));
    kept.addAll(lines.subList(lines.size() - LAST, lines.size()));
    return kept;
  }
}
