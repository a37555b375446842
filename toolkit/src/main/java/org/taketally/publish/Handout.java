package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
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

  /** Cultivars a sheet has room for, and those kept at either end of more. */
  private static final int MOST_CULTIVARS = 42;

  private static final int ENDS = 18;

  /** The cultivars that fit on the sheet: both ends of a long list, and how many are left out. */
  static List<String> cultivars(HandoutWords say, Optional<Difficulty> difficulty) {
    List<CultivarTake> all = difficulty.map(Difficulty::cultivars).orElse(List.of());
    if (all.size() <= MOST_CULTIVARS) {
      return all.stream().map(say::cultivar).toList();
    }
    List<String> kept = new ArrayList<>();
    all.subList(0, ENDS).forEach(c -> kept.add(say.cultivar(c)));
    kept.add(say.left(all.size() - 2 * ENDS));
    all.subList(all.size() - ENDS, all.size()).forEach(c -> kept.add(say.cultivar(c)));
    return kept;
  }

  /** The list of cultivars, once if there is any. */
  List<List<String>> cultivarLists() {
    return cultivars.isEmpty() ? List.of() : List.of(cultivars);
  }
}
