package org.taketally.records;

import java.util.OptionalDouble;

/** Reads takes given as percentages of grafts, where the dictionary says they are. */
final class PercentReader implements FieldReader {

  private static final double WHOLE = 100;

  private final NumberNotation notation;

  PercentReader(NumberNotation notation) {
    this.notation = notation;
  }

  @Override
  public FieldValue read(String text, boolean exact) {
    String digits = text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text;
    OptionalDouble read = exact ? NumberNotation.exact(digits) : notation.read(digits);
    if (read.isEmpty()) {
      return notation.refuse(digits, "a percentage");
    }
    double percent = read.getAsDouble();
    if (!(percent >= 0 && percent <= WHOLE)) {
      return FieldValue.wrong(
          ProblemKind.OUT_OF_RANGE, "a percentage from 0 to 100", "correct the percentage");
    }
    return FieldValue.number(percent);
  }
}
