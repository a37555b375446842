package org.taketally.answers.advice;

/**
 * A choice on which nothing is advised.
 *
 * @param factor column of the records
 * @param reason why
 */
public record NoAdvice(String factor, Reason reason) {

  /** Why nothing is advised. */
  public enum Reason {
    /** Whichever is chosen, take differs by less than the margin. */
    NO_PRACTICAL_DIFFERENCE,
    /** No difference is sure, or none is large enough to act on. */
    NOT_SURE,
    /** Levels were hardly used within the same cultivars, hands, seasons and days. */
    NOT_COMPARED,
    /** The records don't say who grafted, so a hand can't be told from what it used. */
    HANDS_NOT_RECORDED,
    /** It would tell on too few people. */
    WITHHELD
  }
}
