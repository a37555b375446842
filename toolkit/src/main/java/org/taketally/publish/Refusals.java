package org.taketally.publish;

import org.taketally.publish.privacy.Evidence;
import org.taketally.publish.privacy.PrivacyRule;
import org.taketally.wording.Words;

/** Why no page can be made, and what would help. */
final class Refusals {

  private static final String HELP =
      "add more records, or show the analysis page only to those who made the grafts";

  private Refusals() {}

  static String besideEarlierPages() {
    return "a page would tell on its members beside those published before: the difference could be"
        + " one member's result; add more records, or, if the earlier pages were never shown to"
        + " anybody, remove the file of published counts";
  }

  static String tooFew(Evidence evidence, PrivacyRule rule) {
    long grafts = evidence.count(evidence.all()).grafts();
    if (!evidence.namesMembers()) {
      return ("the records don't say who grafted (%s), so nobody can see how few people stand"
              + " behind a line: fill in the grafter column, a letter for each person will do;"
              + " or say how many people made the grafts (--members, two or more), and their"
              + " joint result can be shown")
          .formatted(Words.count(grafts, "assessed graft"));
    }
    return ("a page would tell on its members: these records hold %s by %s, and a page needs at"
            + " least %d grafts by %d members, none with more than %s of them; %s")
        .formatted(
            Words.count(grafts, "assessed graft"),
            Words.count(evidence.members(evidence.all()), "member"),
            rule.grafts(),
            rule.members(),
            Words.percent(rule.largestShare()),
            HELP);
  }
}
