package org.taketally.wording.figures;

import org.taketally.wording.Words;

/** What charts of a user's own say beside the user's words. */
public final class OwnChartWords {

  private OwnChartWords() {}

  /**
   * A line with its range, for those who can't see it.
   *
   * @param name of the line
   * @param value as it is written along the axis
   * @param low lower end, likewise
   * @param high upper end, likewise
   * @return a sentence
   */
  public static String range(String name, String value, String low, String high) {
    return "%s: %s (%s to %s).".formatted(name, value, low, high);
  }

  /**
   * How a line or a set of points runs, for those who can't see it.
   *
   * @param name of the line
   * @param first its first height and place, as written along the axes
   * @param last its last height and place
   * @return a sentence
   */
  public static String run(String name, String[] first, String[] last) {
    return "%s: %s at %s to %s at %s.".formatted(name, first[0], first[1], last[0], last[1]);
  }

  /**
   * Lines left out of a long list.
   *
   * @param left how many
   * @return a few words
   */
  public static String gap(int left) {
    return Words.count(left) + " lines between are left out";
  }
}
