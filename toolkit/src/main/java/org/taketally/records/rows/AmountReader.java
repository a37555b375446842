package org.taketally.records.rows;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.Unit;
import org.taketally.records.problems.Plain;
import org.taketally.records.problems.ProblemKind;

/** Reads decimal numbers and turns them into our unit. */
final class AmountReader implements FieldReader {

  /** A number with its unit in the cell: {@code 38 F}, {@code 6mm}. */
  private static final Pattern WITH_UNIT = Pattern.compile("(-?[\\d.,]*\\d)\\s*([^\\d\\s].*)");

  private final ColumnRule rule;
  private final NumberNotation notation;
  private final Optional<Unit> unit;

  AmountReader(ColumnRule rule, NumberNotation notation, Optional<Unit> unit) {
    this.rule = rule;
    this.notation = notation;
    this.unit = unit;
  }

  @Override
  public FieldValue read(String text, boolean exact) {
    Matcher written = WITH_UNIT.matcher(text);
    Optional<Unit> own =
        written.matches() ? Unit.of(rule, written.group(2).strip()) : Optional.empty();
    String digits = own.isPresent() ? written.group(1) : text;
    OptionalDouble read = exact ? NumberNotation.exact(digits) : notation.read(digits);
    if (read.isEmpty()) {
      return notation.refuse(text, "a number");
    }
    Optional<Unit> from = own.or(() -> unit);
    double value = from.map(u -> u.toOurs(read.getAsDouble())).orElse(read.getAsDouble());
    if (!(value >= rule.lowest() && value <= rule.highest())) {
      return FieldValue.wrong(ProblemKind.OUT_OF_RANGE, range(), remedy(read.getAsDouble()));
    }
    return FieldValue.number(value);
  }

  private String range() {
    String ours =
        Double.isInfinite(rule.highest())
            ? "a number of %s %s or more".formatted(Plain.number(rule.lowest()), rule.unit())
            : "a number from %s to %s %s"
                .formatted(Plain.number(rule.lowest()), Plain.number(rule.highest()), rule.unit());
    return unit.isPresent() ? ours + " after conversion" : ours;
  }

  private String remedy(double value) {
    return "correct it; if it means \"not recorded\", leave it blank or list it under \"missing\""
        + " in the dictionary"
        + otherUnit(value);
  }

  /** A hint for numbers that fit in another unit than that of the column. */
  private String otherUnit(double value) {
    if (unit.isPresent()) {
      return fits(value) ? "; if this one is in " + rule.unit() + ", convert it" : "";
    }
    if (rule.unit().equals("days")) {
      return "";
    }
    boolean length = rule.unit().equals("mm");
    if (!(length ? fits(Unit.INCH.toOurs(value)) : fits(Unit.FAHRENHEIT.toOurs(value)))) {
      return "";
    }
    return length
        ? "; if the column is in inches, say \"unit\": \"inch\""
        : "; if the column is in Fahrenheit, say \"unit\": \"F\"";
  }

  private boolean fits(double value) {
    return !rule.unit().isEmpty() && value >= rule.lowest() && value <= rule.highest();
  }
}
