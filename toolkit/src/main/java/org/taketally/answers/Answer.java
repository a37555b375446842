package org.taketally.answers;

import java.util.List;

/** One answer to one question: a headline, an explanation in plain words, and the numbers. */
public interface Answer {

  /**
   * The question this answers.
   *
   * @return a short title, e.g. {@code Does the rootstock matter?}
   */
  String title();

  /**
   * The answer in one sentence, with how sure it is and from how many grafts.
   *
   * @return plain words
   */
  String headline();

  /**
   * The whole answer in plain words: the headline, then what it rests on and its limits.
   *
   * @return sentences, paragraphs parted by a line feed
   */
  String text();

  /**
   * The main table.
   *
   * @return one row per statement
   */
  AnswerTable table();

  /**
   * All tables, the main one first.
   *
   * @return at least one
   */
  default List<AnswerTable> tables() {
    return List.of(table());
  }
}
