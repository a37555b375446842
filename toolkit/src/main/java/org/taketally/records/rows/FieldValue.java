package org.taketally.records.rows;

import org.taketally.records.problems.Finding;
import org.taketally.records.problems.ProblemKind;
import org.taketally.terms.Severity;

/**
 * What a field comes to. Only the part that belongs to the kind of its column is filled.
 *
 * @param code number of a level, or of a day since 1970-01-01; else {@link #MISSING}
 * @param number a number in our unit; else NaN
 * @param text free text; else null
 * @param finding what is wrong or worth saying; else null
 */
record FieldValue(int code, double number, String text, Finding finding) {

  /** Code of a level or day that isn't recorded. */
  static final int MISSING = Integer.MIN_VALUE;

  static final FieldValue NOT_RECORDED = new FieldValue(MISSING, Double.NaN, null, null);

  /** Recorded, but not kept. */
  static final FieldValue UNKEPT = new FieldValue(0, Double.NaN, null, null);

  static FieldValue code(int code) {
    return new FieldValue(code, Double.NaN, null, null);
  }

  static FieldValue number(double number) {
    return new FieldValue(MISSING, number, null, null);
  }

  static FieldValue text(String text) {
    return new FieldValue(MISSING, Double.NaN, text, null);
  }

  static FieldValue wrong(ProblemKind kind, String expected, String remedy) {
    return NOT_RECORDED.with(new Finding(kind, expected, remedy));
  }

  FieldValue with(Finding aFinding) {
    return new FieldValue(code, number, text, aFinding);
  }

  boolean isError() {
    return finding != null && finding.kind().severity() == Severity.ERROR;
  }
}
