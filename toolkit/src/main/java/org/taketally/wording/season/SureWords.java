package org.taketally.wording.season;

import java.util.List;
import org.taketally.answers.AnswerOptions.Bands;
import org.taketally.wording.language.Phrases;

/** What "likely" and "probably" mean, said in the same words wherever they are used. */
public final class SureWords {

  private final Phrases phrases;

  SureWords(Phrases phrases) {
    this.phrases = phrases;
  }

  /**
   * What likely means.
   *
   * @return two sentences
   */
  public String likely() {
    return phrases.say("read.likely");
  }

  /**
   * What probably means.
   *
   * @return a sentence
   */
  public String probably() {
    return phrases.say("read.probably", phrases.percent(Bands.DEFAULT.sure()));
  }

  /**
   * That an open question is an answer.
   *
   * @return a sentence
   */
  public String cantTell() {
    return phrases.say("read.cant.tell");
  }

  /**
   * Both limits of sureness.
   *
   * @return what likely means, what probably means
   */
  public List<String> limits() {
    return List.of(likely(), probably());
  }
}
