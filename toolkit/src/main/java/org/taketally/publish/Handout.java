package org.taketally.publish;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.effects.Difficulty;
import org.taketally.wording.season.HandoutWords;
import org.taketally.wording.season.PageWords;

/**
 * The most important of a season page on one sheet.
 *
 * @param words its language and last line
 * @param say its headings and what every sheet says
 * @param title its title
 * @param lead one sentence under the title
 * @param found what was found, a point each
 * @param steps what to do differently, a point each
 * @param cultivars with their takes, hardest first; empty if none may be shown
 */
record Handout(
    PageWords words,
    HandoutWords say,
    String title,
    String lead,
    List<String> found,
    List<String> steps,
    List<String> cultivars) {

  /** Steps a sheet has room for. */
  static final int MOST_STEPS = 3;

  /** Lines of cultivars a sheet has room for, and those kept at either end of more. */
  private static final int MOST_LINES = 42;

  private static final int END_LINES = 18;

  /** Columns the cultivars stand in. */
  private static final int COLUMNS = 3;

  /** Letters of a line of a column; a longer name takes two. */
  private static final int LINE = 30;

  /** Letters of a line of the sheet, and how many lines its points usually take. */
  private static final int WIDE_LINE = 90;

  private static final int USUAL_LINES = 12;

  /**
   * The cultivars that fit on the sheet: both ends of a long list, and how many are left out.
   *
   * @param points what else the sheet says: the more lines it takes, the fewer cultivars fit
   */
  static List<String> cultivars(
      HandoutWords say, Optional<Difficulty> difficulty, List<String> points) {
    int more = points.stream().mapToInt(point -> lines(point, WIDE_LINE)).sum() - USUAL_LINES;
    int taken = COLUMNS * Math.max(0, more);
    int room = Math.max(COLUMNS, MOST_LINES - taken);
    int end = Math.max(1, END_LINES - (taken + 1) / 2);
    List<String> all =
        difficulty.map(Difficulty::cultivars).orElse(List.of()).stream()
            .map(say::cultivar)
            .toList();
    if (all.stream().mapToInt(name -> lines(name, LINE)).sum() <= room) {
      return all;
    }
    List<String> backwards = new ArrayList<>(all);
    Collections.reverse(backwards);
    List<String> hardest = fitting(all, end);
    List<String> easiest = new ArrayList<>(fitting(backwards, end));
    Collections.reverse(easiest);
    List<String> kept = new ArrayList<>(hardest);
    kept.add(say.left(all.size() - hardest.size() - easiest.size()));
    kept.addAll(easiest);
    return kept;
  }

  private static int lines(String text, int letters) {
    return 1 + (text.length() - 1) / letters;
  }

  /** The first of a list, as many as fit into so many lines. */
  private static List<String> fitting(List<String> cultivars, int most) {
    int lines = 0;
    int kept = 0;
    while (kept < cultivars.size() && lines + lines(cultivars.get(kept), LINE) <= most) {
      lines += lines(cultivars.get(kept), LINE);
      kept++;
    }
    return cultivars.subList(0, kept);
  }

  /** The list of cultivars, once if there is any. */
  List<List<String>> cultivarLists() {
    return cultivars.isEmpty() ? List.of() : List.of(cultivars);
  }
}
