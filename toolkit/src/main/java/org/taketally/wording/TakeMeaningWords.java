package org.taketally.wording;

import org.taketally.answers.counts.TakeMeaning;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.SeasonWords;

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
    return SeasonWords.in(Language.ENGLISH).overview().takeMeans(meaning, 0);
  }
}
