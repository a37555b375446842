package org.taketally.answers;

/**
 * A question these records don't answer, and why.
 *
 * @param question what was asked
 * @param column the column it is about, e.g. {@code rootstock}; empty if about none
 * @param reason why there is no answer
 */
public record Unanswered(Question question, String column, Reason reason) {

  /**
   * A question about no column.
   *
   * @param question what was asked
   * @param reason why there is no answer
   * @return without a column
   */
  public static Unanswered of(Question question, Reason reason) {
    return new Unanswered(question, "", reason);
  }

  /** Why a question has no answer. */
  public sealed interface Reason {}

  /**
   * The records hold one level only, so there is nothing to compare it with.
   *
   * @param level that level, grafters by letter unless names were asked for
   */
  public record OneLevelOnly(String level) implements Reason {}

  /**
   * Take was no greater than the drop asked about.
   *
   * @param take counted take, 0 to 1
   * @param margin the drop, 0 to 1
   */
  public record TakeWithinMargin(double take, double margin) implements Reason {}

  /** Reasons that need no numbers. */
  public enum Cause implements Reason {
    /** The column is not in the model. */
    NOT_IN_MODEL,
    /** The number is not in the model: too rarely recorded, or alike in all grafts. */
    NUMBER_NOT_IN_MODEL,
    /** More patterns of records than can be checked one by one. */
    TOO_MANY_CELLS,
    /** It takes counts on several days, which were not given. */
    COUNTED_ONCE,
    /** Counts were given, but no row with a living graft was counted more than once. */
    NO_ROW_COUNTED_AGAIN,
    /** It takes long, and was not asked for. */
    NOT_ASKED
  }
}
