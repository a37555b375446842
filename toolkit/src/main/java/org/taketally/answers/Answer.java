package org.taketally.answers;

/**
 * One answer to one question: numbers, enums and names of levels. What it says in words, and its
 * tables with their headings, are made from it in {@code wording}.
 */
public interface Answer {

  /**
   * The question this answers.
   *
   * @return one of all questions
   */
  Question question();
}
