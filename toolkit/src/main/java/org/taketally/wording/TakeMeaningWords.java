package org.taketally.wording;

import org.taketally.answers.counts.TakeMeaning;

/** What a take is, in words. */
public final class TakeMeaningWords {

  private TakeMeaningWords() {}

  /**
   * What a take is in some records.
   *
   * @param meaning of the records
   * @return one sentence
   */
  public static String of(TakeMeaning meaning) {
    return "A graft has taken when it was alive when counted%s."
        .formatted(
            meaning
                .days()
                .map(days -> ", " + words(days))
                .orElse(", on the day it was last counted"));
  }

  private static String words(TakeMeaning.Days days) {
    return days.from() == days.to()
        ? Words.count(days.from(), "day") + " after grafting"
        : "mostly %d to %d days after grafting".formatted(days.from(), days.to());
  }
}
