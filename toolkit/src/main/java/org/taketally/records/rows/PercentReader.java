package org.taketally.records.rows;

import java.util.OptionalDouble;
import org.taketally.records.columns.Unit;
import org.taketally.records.problems.ProblemKind;

/**
 * Reads takes given as percentages or as shares of grafts, where the dictionary says they are. Both
 * come out as percentages.
 */
final class PercentReader implements FieldReader {

  private static final double WHOLE = 100;

  private final NumberNotation notation;
  private final Unit unit;

  PercentReader(NumberNotation notation, Unit unit) {
    this.notation = notation;
    this.unit = unit;
  }

  @Override
  public FieldValue read(String text, boolean exact) {
    boolean percentSign = text.endsWith("%");
    String digits = percentSign ? text.substring(0, text.length() - 1).strip() : text;
    OptionalDouble read = exact ? NumberNotation.exact(digits) : notation.read(digits);
    if (read.isEmpty()) {
      return notation.refuse(digits, unit == Unit.SHARE ? "a share" : "a percentage");
    }
    double percent = percentSign ? read.getAsDouble() : unit.toOurs(read.getAsDouble());
    if (!(percent >= 0 && percent <= WHOLE)) {
      return unit == Unit.SHARE && !percentSign
          ? FieldValue.wrong(ProblemKind.OUT_OF_RANGE, "a share from 0 to 1", "correct the share")
          : FieldValue.wrong(
              ProblemKind.OUT_OF_RANGE, "a percentage from 0 to 100", "correct the percentage");
    }
    return FieldValue.number(percent);
  }
}
