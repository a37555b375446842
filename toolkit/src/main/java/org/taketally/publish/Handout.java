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

  /** Letters of a line; a longer name takes two. */
  private static final int LINE = 30;

  /** The cultivars that fit on the sheet: both ends of a long list, and how many are left out. */
  static List<String> cultivars(HandoutWords say, Optional<Difficulty> difficulty) {
    List<String> all =
        difficulty.map(Difficulty::cultivars).orElse(List.of()).stream()
            .map(say::cultivar)
            .toList();
    if (all.stream().mapToInt(Handout::lines).sum() <= MOST_LINES) {
      return all;
    }
    List<String> backwards = new ArrayList<>(all);
    Collections.reverse(backwards);
    List<String> hardest = fitting(all);
    List<String> easiest = new ArrayList<>(fitting(backwards));
    Collections.reverse(easiest);
    List<String> kept = new ArrayList<>(hardest);
    kept.add(say.left(all.size() - hardest.size() - easiest.size()));
    kept.addAll(easiest);
    return kept;
  }

  private static int lines(String cultivar) {
    return 1 + (cultivar.length() - 1) / LINE;
  }

  /** The first of a list, as many as fit at one end. */
  private static List<String> fitting(List<String> cultivars) {
    int lines = 0;
    int kept = 0;
    while (kept < cultivars.size() && lines + lines(cultivars.get(kept)) <= END_LINES) {
      lines += lines(cultivars.get(kept));
      kept++;
    }
    return cultivars.subList(0, kept);
  }

  /** The list of cultivars, once if there is any. */
  List<List<String>> cultivarLists() {
    return cultivars.isEmpty() ? List.of() : List.of(cultivars);
  }
}
