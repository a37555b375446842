package org.taketally.wording.season;

import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/**
 * The words of a season page, part by part.
 *
 * @param page its title and what stands around it
 * @param overview who took part, what was counted, what changed
 * @param advice what to do differently
 * @param cultivars how hard each is
 * @param rootstocks whether they matter
 * @param factors what goes with take
 * @param times storage, and what is lost later
 * @param sure what likely and probably mean
 * @param closing cautions, how to read, where numbers come from
 * @param handout the sheet to print
 */
public record SeasonWords(
    PageWords page,
    OverviewWords overview,
    AdviceWords advice,
    CultivarWords cultivars,
    RootstockWords rootstocks,
    FactorWords factors,
    TimeWords times,
    SureWords sure,
    ClosingWords closing,
    HandoutWords handout) {

  /** What stands where something may not be shown. */
  public static final String NOT_SHOWN = "–";

  /**
   * The language.
   *
   * @return as asked for
   */
  public Language language() {
    return page.language();
  }

  /**
   * The words in a language.
   *
   * @param language of the page
   * @return the words
   */
  public static SeasonWords in(Language language) {
    Phrases phrases = Phrases.in(language);
    return new SeasonWords(
        new PageWords(phrases),
        new OverviewWords(phrases),
        new AdviceWords(phrases),
        new CultivarWords(phrases),
        new RootstockWords(phrases),
        new FactorWords(phrases),
        new TimeWords(phrases),
        new SureWords(phrases),
        new ClosingWords(phrases),
        new HandoutWords(phrases));
  }
}
