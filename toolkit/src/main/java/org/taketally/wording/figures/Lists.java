package org.taketally.wording.figures;

import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** Names and takes as figures say them. */
final class Lists {

  static final Phrases ENGLISH = Phrases.in(Language.ENGLISH);
  private static final int MOST_NAMES = 12;

  private Lists() {}

  /** Names in a sentence: none, all, or the first and how many more. */
  static String words(Phrases phrases, List<String> names) {
    if (names.isEmpty()) {
      return phrases.say("figure.none");
    }
    if (names.size() <= MOST_NAMES) {
      return phrases.list(names);
    }
    return phrases.say(
        "figure.more", String.join(", ", names.subList(0, MOST_NAMES)), names.size() - MOST_NAMES);
  }

  /** A take in per cent with its likely range. */
  static String take(Phrases phrases, Estimate take) {
    return phrases.say(
        "figure.take", phrases.percent(take.value()), phrases.percents(take.interval()));
  }
}
