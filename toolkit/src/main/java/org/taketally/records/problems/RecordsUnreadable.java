package org.taketally.records.problems;

import org.taketally.terms.Problem;

/** A file of records that can't be read at all: it says where, what was found, and what to do. */
public final class RecordsUnreadable extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  /**
   * An exception whose message is the problem in one sentence.
   *
   * @param problem place, found, expected, remedy
   */
  public RecordsUnreadable(Problem problem) {
    super(problem.sentence());
    this.problem = problem;
  }

  /**
   * What is wrong.
   *
   * @return place, found, expected, remedy
   */
  public Problem problem() {
    return problem;
  }
}
