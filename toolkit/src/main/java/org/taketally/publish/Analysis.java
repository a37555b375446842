package org.taketally.publish;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;

/**
 * All answers to one set of records, ready to be shown.
 *
 * @param answers in the order they are shown; at most one of each kind is looked at by pages
 * @param warnings what the fit warns of, one sentence each
 * @param methods how the answers were worked out, for a reviewer; may be empty
 */
public record Analysis(List<Answer> answers, List<String> warnings, String methods) {

  public Analysis {
    answers = List.copyOf(answers);
    warnings = List.copyOf(warnings);
  }

  /**
   * Answers without warnings or methods text.
   *
   * @param answers in the order they are shown
   * @return an analysis
   */
  public static Analysis of(List<? extends Answer> answers) {
    return new Analysis(List.copyOf(answers), List.of(), "");
  }

  /**
   * The answer of a kind.
   *
   * @param kind its class
   * @param <T> its class
   * @return the first of that kind, if there is one
   */
  public <T extends Answer> Optional<T> find(Class<T> kind) {
    return answers.stream().filter(kind::isInstance).map(kind::cast).findFirst();
  }
}
