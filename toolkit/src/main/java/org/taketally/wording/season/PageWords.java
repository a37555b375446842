package org.taketally.wording.season;

import java.util.List;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** What stands around a season page. */
public final class PageWords {

  private final Phrases phrases;
  private final Takes takes;

  PageWords(Phrases phrases) {
    this.phrases = phrases;
    this.takes = new Takes(phrases);
  }

  /**
   * The language of the page.
   *
   * @return its language
   */
  public Language language() {
    return phrases.language();
  }

  /**
   * The title.
   *
   * @param club who publishes; may be blank
   * @param season the page is about; may be empty
   * @return a few words
   */
  public String title(String club, String season) {
    if (club.isBlank()) {
      return season.isEmpty() ? phrases.say("title") : phrases.say("title.season", season);
    }
    return season.isEmpty()
        ? phrases.say("title.club", club)
        : phrases.say("title.club.season", club, season);
  }

  /**
   * What the page is about.
   *
   * @param grafts assessed
   * @param seasons they were made in, in order
   * @return a sentence
   */
  public String lead(long grafts, List<String> seasons) {
    return seasons.isEmpty()
        ? phrases.say("lead", grafts)
        : phrases.say("lead.seasons", grafts, takes.seasons(seasons));
  }

  /**
   * The last line.
   *
   * @return a sentence
   */
  public String footer() {
    return phrases.say("footer");
  }

  /**
   * The link past the menu.
   *
   * @return a few words
   */
  public String skip() {
    return phrases.say("skip");
  }

  /**
   * What the menu is.
   *
   * @return a few words
   */
  public String onThisPage() {
    return phrases.say("on.this.page");
  }
}
