package org.taketally.wording;

import org.taketally.answers.Question;

/** Every question in words. */
public final class QuestionWords {

  private QuestionWords() {}

  /**
   * A question about no column.
   *
   * @param question what is asked
   * @return e.g. {@code Which cultivars are hard to get to take?}
   */
  public static String of(Question question) {
    return of(question, "");
  }

  /**
   * A question.
   *
   * @param question what is asked
   * @param column the column it is about; empty if about none
   * @return e.g. {@code Does the rootstock matter?}
   */
  public static String of(Question question, String column) {
    String what = Words.column(column);
    return switch (question) {
      case LEVEL_APART -> "Does one %s stand apart?".formatted(column.isEmpty() ? "batch" : what);
      case DOES_IT_MATTER -> "Does the %s matter?".formatted(what);
      case CONTRASTS ->
          "Do some %s together take differently from others?".formatted(Words.levels(column));
      case MARGIN_COST -> "What does a drop in take cost?";
      case DIFFICULTY -> "Which cultivars are hard to get to take?";
      case IMPORTANCE -> "What moves take?";
      case CURVE -> "How does take change with %s?".formatted(what);
      case LATE_LOSS -> "How many takes are lost later?";
      case PAIRINGS -> "Does a cultivar fail on one rootstock alone?";
      case GRAFTERS -> "Is it the hand or the wood?";
      case BLOCKS -> "Does a block of a site do worse?";
      case CONFOUNDING -> "What was compared with what";
      case FIT -> "Does the model fit these records?";
      case SECOND_OPINIONS -> "Does another way of predicting do better?";
      case COUNTS -> "How many took, by %s?".formatted(what);
    };
  }
}
