package org.taketally.wording.season;

import java.util.List;
import java.util.stream.Stream;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.wording.language.Phrases;

/** The sheet to print in words: what was found, how sure, and what not to conclude. */
public final class HandoutWords {

  /** A space at which no line ends: a long name's numbers stay together. */
  private static final char UNBROKEN = '\u00a0';

  private final Phrases phrases;

  HandoutWords(Phrases phrases) {
    this.phrases = phrases;
  }

  /**
   * Heading of what was found.
   *
   * @return a few words
   */
  public String found() {
    return phrases.say("handout.found");
  }

  /**
   * Heading of advice.
   *
   * @return a few words
   */
  public String doDifferently() {
    return phrases.say("handout.do");
  }

  /**
   * Heading of the cultivars.
   *
   * @return a few words
   */
  public String cultivars() {
    return phrases.say("handout.cultivars");
  }

  /**
   * A cultivar with its take in 100 grafts and its range.
   *
   * @param cultivar that may be shown
   * @return a few words
   */
  public String cultivar(CultivarTake cultivar) {
    String low = phrases.count(Math.round(100 * cultivar.take().low()));
    String high = phrases.count(Math.round(100 * cultivar.take().high()));
    String numbers =
        phrases.say(
            "take.cell",
            phrases.count(Math.round(100 * cultivar.take().value())),
            phrases.say("range", low, high));
    return cultivar.cultivar() + " " + numbers.replace(' ', UNBROKEN);
  }

  /**
   * That cultivars are left out.
   *
   * @param left how many
   * @return a sentence
   */
  public String left(int left) {
    return phrases.say("handout.left", left);
  }

  /**
   * Heading of how sure it is.
   *
   * @return a few words
   */
  public String sure() {
    return phrases.say("handout.sure");
  }

  /**
   * What likely, probably and an open question mean.
   *
   * @return a few sentences
   */
  public String howSure() {
    SureWords sure = new SureWords(phrases);
    return String.join(" ", sure.likely(), sure.probably(), sure.cantTell());
  }

  /**
   * Heading of what not to conclude.
   *
   * @return a few words
   */
  public String not() {
    return phrases.say("handout.not");
  }

  /**
   * What not to conclude.
   *
   * @return a point each
   */
  public List<String> notToConclude() {
    return Stream.of(
            "handout.not.cause", "handout.not.other", "handout.not.here", "handout.not.rootstock")
        .map(phrases::say)
        .toList();
  }

  /**
   * Heading of the cautions.
   *
   * @return a few words
   */
  public String care() {
    return phrases.say("handout.care");
  }

  /**
   * The cautions.
   *
   * @return a paragraph
   */
  public String cautions() {
    return phrases.say("handout.care.text");
  }

  /**
   * Where more stands.
   *
   * @return a sentence
   */
  public String more() {
    return phrases.say("handout.more");
  }
}
