package org.taketally.wording;

import org.taketally.answers.Unanswered;
import org.taketally.answers.Unanswered.Cause;
import org.taketally.answers.Unanswered.OneLevelOnly;
import org.taketally.answers.Unanswered.TakeWithinMargin;

/** Why a question has no answer, in words. */
public final class UnansweredWords {

  private UnansweredWords() {}

  /**
   * The question.
   *
   * @param missing a question without an answer
   * @return e.g. {@code Does the rootstock matter?}
   */
  public static String question(Unanswered missing) {
    return QuestionWords.of(missing.question(), missing.column());
  }

  /**
   * The question, and why it has no answer.
   *
   * @param missing a question without an answer
   * @return two sentences
   */
  public static String sentence(Unanswered missing) {
    return question(missing) + " " + reason(missing);
  }

  /**
   * Why there is no answer.
   *
   * @param missing a question without an answer
   * @return a sentence or two
   */
  public static String reason(Unanswered missing) {
    String what = Words.column(missing.column());
    if (missing.reason() instanceof OneLevelOnly one) {
      return "These records hold only one %s (%s): there is nothing to compare it with. Records of a second one, in the same weeks and by the same hands, would give an answer."
          .formatted(what, one.level());
    }
    if (missing.reason() instanceof TakeWithinMargin take) {
      return "Take is %s, so it can't drop by %s; ask with a smaller margin."
          .formatted(Words.percent(take.take()), Words.points(take.margin()));
    }
    return switch ((Cause) missing.reason()) {
      case NOT_IN_MODEL ->
          "The model leaves %s out; name it in the model to have it compared.".formatted(what);
      case NUMBER_NOT_IN_MODEL ->
          "Days of storage aren't in the model: they need the dates the budwood was cut and"
              + " grafted, for most grafts and with at least two different values.";
      case TOO_MANY_CELLS ->
          "Not checked: there are more than a million different patterns of records. Analyse a"
              + " season or a site at a time to have the fit checked.";
      case COUNTED_ONCE ->
          "One count of each graft can't tell. It takes a second file that says how many were alive"
              + " on two days or more: record, assessed_date, alive.";
      case NO_ROW_COUNTED_AGAIN -> "No row that had a living graft was counted more than once.";
      case NOT_ASKED -> "Not asked for, as it takes about as long as everything else together.";
    };
  }
}
