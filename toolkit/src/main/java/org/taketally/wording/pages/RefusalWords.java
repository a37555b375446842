package org.taketally.wording.pages;

import org.taketally.wording.Words;
import org.taketally.wording.season.ClosingWords;

/** Why no page can be made, and what would help; for whoever publishes. */
public final class RefusalWords {

  private static final String HELP =
      "add more records, or show the analysis page only to those who made the grafts";

  private RefusalWords() {}

  /**
   * Beside pages published already a further one would tell.
   *
   * @return a sentence, without a capital
   */
  public static String besideEarlierPages() {
    return "a page would tell on its members beside those published before: the difference could be"
        + " one member's result; add more records, or, if the earlier pages were never shown to"
        + " anybody, remove the file of published counts";
  }

  /**
   * The records don't say who grafted.
   *
   * @param grafts assessed
   * @return a sentence, without a capital
   */
  public static String nobodyNamed(long grafts) {
    return ("the records don't say who grafted (%s), so nobody can see how few people stand"
            + " behind a line: fill in the grafter column, a letter for each person will do;"
            + " or say how many people made the grafts (--members, two or more), and their"
            + " joint result can be shown")
        .formatted(Words.count(grafts, "assessed graft"));
  }

  /**
   * Too few people made the grafts.
   *
   * @param grafts assessed
   * @param members who made them
   * @param rule of the page
   * @return a sentence, without a capital
   */
  public static String tooFew(long grafts, int members, ClosingWords.Rule rule) {
    return ("a page would tell on its members: these records hold %s by %s, and a page needs at"
            + " least %d grafts by %d members, none with more than %s of them; %s")
        .formatted(
            Words.count(grafts, "assessed graft"),
            Words.count(members, "member"),
            rule.grafts(),
            rule.members(),
            Words.percent(rule.largestShare()),
            HELP);
  }
}
