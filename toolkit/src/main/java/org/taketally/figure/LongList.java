package org.taketally.figure;

import java.util.ArrayList;
import java.util.List;
import org.taketally.wording.Words;

/** Keeps a long list readable: both ends stay, and the cut is said. */
final class LongList {

  private static final int MOST = 40;
  private static final int FIRST = 20;
  private static final int LAST = 10;

  private static final int MOST_NAMES = 12;

  private LongList() {}

  /** Names in a sentence: none, all, or the first and how many more. */
  static String words(List<String> names) {
    if (names.isEmpty()) {
      return "none";
    }
    if (names.size() <= MOST_NAMES) {
      return Words.list(names);
    }
    return String.join(", ", names.subList(0, MOST_NAMES))
        + " and "
        + Words.count(names.size() - MOST_NAMES)
        + " more";
  }

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
    kept.add(new Line.Gap(Words.count(left) + " " + things + " between are in the table"));
    kept.addAll(lines.subList(lines.size() - LAST, lines.size()));
    return kept;
  }
}
