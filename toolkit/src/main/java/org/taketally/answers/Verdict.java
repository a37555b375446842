package org.taketally.answers;

/** The five things that can be said about whether a factor matters. */
public enum Verdict {
  /** Levels differ, and by more than the margin is plausible or shown. */
  MATTERS("matters"),
  /** Shown to differ by less than the margin. */
  NO_PRACTICAL_DIFFERENCE("no practical difference"),
  /** Levels differ, but shown to differ by less than the margin. */
  LESS_THAN_YOU_CARE_ABOUT("differs, but less than you care about"),
  /** The records are too few or too noisy to say either. */
  CANT_TELL_YET("can't tell yet"),
  /** Levels were not compared within the same cultivars, grafters or seasons. */
  ENTANGLED("entangled");

  private final String words;

  Verdict(String words) {
    this.words = words;
  }

  /**
   * As printed.
   *
   * @return lower case words
   */
  public String words() {
    return words;
  }
}
