package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;

/** An answer in plain words, and its tables with their headings. */
public interface AnswerWords {

  /**
   * The question that is answered.
   *
   * @return a short title, e.g. {@code Does the rootstock matter?}
   */
  String question();

  /**
   * The answer in one sentence, with how sure it is and from how many grafts.
   *
   * @return plain words
   */
  String headline();

  /**
   * What the answer rests on and its limits, beyond the headline.
   *
   * @return sentences, a paragraph each
   */
  List<String> more();

  /**
   * All tables, the main one first.
   *
   * @return at least one
   */
  List<AnswerTable> tables();

  /**
   * The whole answer: the headline and what it rests on.
   *
   * @return at least one paragraph
   */
  default List<String> paragraphs() {
    List<String> all = new ArrayList<>(List.of(headline()));
    all.addAll(more());
    return all;
  }

  /**
   * The whole answer as one text.
   *
   * @return paragraphs parted by a line feed
   */
  default String text() {
    return String.join("\n", paragraphs());
  }

  /**
   * The main table.
   *
   * @return one row per statement
   */
  default AnswerTable table() {
    return tables().get(0);
  }
}
