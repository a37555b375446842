package org.taketally.answers;

/** How hard a cultivar is to get to take, by the thresholds of {@link AnswerOptions.Bands}. */
public enum Band {
  EASY("easy"),
  MIDDLING("middling"),
  HARD("hard"),
  CANT_TELL("can't tell");

  private final String words;

  Band(String words) {
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
