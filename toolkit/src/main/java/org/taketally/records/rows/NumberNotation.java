package org.taketally.records.rows;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.taketally.records.problems.Plain;
import org.taketally.records.problems.ProblemKind;

/**
 * Reads decimal numbers: with a point, or with the decimal sign of the dictionary. A number that
 * could be read two ways is never read; the problem names both.
 */
final class NumberNotation {

  private static final Pattern PLAIN = Pattern.compile("-?(\\d+(\\.\\d+)?|\\.\\d+)");
  private static final Pattern COMMA = Pattern.compile("-?(\\d+,\\d+|,\\d+)");
  private static final Pattern GROUPED_BY_COMMA = Pattern.compile("-?[1-9]\\d{0,2}(,\\d{3})+");
  private static final Pattern GROUPED_BY_POINT = Pattern.compile("-?[1-9]\\d{0,2}(\\.\\d{3})+");

  private static final Pattern GROUPED_BY_SPACE =
      Pattern.compile("[1-9]\\d{0,2}([ \u00a0\u2009\u202f'’]\\d{3})+");
  private static final Pattern GROUPING = Pattern.compile("\\D");

  private final boolean declared;
  private final boolean comma;
  private final boolean pointInDoubt;

  /**
   * A way of writing numbers.
   *
   * @param declared the decimal sign of the dictionary
   * @param semicolons whether fields are parted by semicolons, as where commas are decimals
   */
  NumberNotation(Optional<Character> declared, boolean semicolons) {
    this.declared = declared.isPresent();
    this.comma = declared.filter(sign -> sign == ',').isPresent();
    this.pointInDoubt = semicolons && declared.isEmpty();
  }

  /** The number, if the text is one and reads one way only. */
  OptionalDouble read(String text) {
    boolean fits =
        comma
            ? COMMA.matcher(text).matches() || isWhole(text)
            : PLAIN.matcher(text).matches()
                && !(pointInDoubt && GROUPED_BY_POINT.matcher(text).matches());
    return fits ? finite(value(text)) : OptionalDouble.empty();
  }

  /**
   * A count: as {@link #read}, and where the dictionary names the decimal sign, with thousands set
   * apart by the other sign or by spaces.
   */
  OptionalDouble readCount(String text) {
    OptionalDouble plain = read(text);
    boolean grouped =
        (comma ? GROUPED_BY_POINT : GROUPED_BY_COMMA).matcher(text).matches() || spaced(text);
    return plain.isEmpty() && declared && grouped ? finite(value(ungrouped(text))) : plain;
  }

  private static boolean spaced(String text) {
    return GROUPED_BY_SPACE.matcher(text).matches();
  }

  private static String ungrouped(String text) {
    return GROUPING.matcher(text).replaceAll("");
  }

  /** What is wrong with a text that {@link #readCount} refuses. */
  FieldValue refuseCount(String text, String expected) {
    boolean point = GROUPED_BY_POINT.matcher(text).matches();
    if (!declared && (point || spaced(text) || GROUPED_BY_COMMA.matcher(text).matches())) {
      String thousands = ungrouped(text);
      String sign = text.indexOf(',') >= 0 ? "." : ",";
      return FieldValue.wrong(
          ProblemKind.AMBIGUOUS_NUMBER,
          "a number that reads one way only; this could be " + readings(text, thousands),
          "if it is %s, write that, or say \"decimal\": \"%s\" for this column in the dictionary"
              .formatted(thousands, sign));
    }
    return refuse(text, expected);
  }

  private static String readings(String text, String thousands) {
    boolean one = spaced(text) || text.replaceAll("\\d", "").length() > 1;
    return one
        ? thousands + (spaced(text) ? " or two numbers" : "")
        : thousands + " or " + Plain.number(value(text));
  }

  /** The number of a cell that holds a number, whatever the sheet's decimal sign. */
  static OptionalDouble exact(String text) {
    try {
      return finite(Double.parseDouble(text));
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  private static OptionalDouble finite(double value) {
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** What is wrong with a text that {@link #read} refuses. */
  FieldValue refuse(String text, String expected) {
    if (GROUPED_BY_COMMA.matcher(text).matches() && !comma) {
      return ambiguous(text.replace(",", ""), text.replace(",", "."), ",");
    }
    if (GROUPED_BY_POINT.matcher(text).matches()) {
      return ambiguous(text.replace(".", ""), text, ".");
    }
    if (COMMA.matcher(text).matches()) {
      return FieldValue.wrong(
          ProblemKind.NOT_A_NUMBER,
          expected + " with a decimal point; as a decimal comma this would be " + value(text),
          "write a point, or say \"decimal\": \",\" in the dictionary");
    }
    return FieldValue.wrong(
        ProblemKind.NOT_A_NUMBER,
        expected + (comma ? " with a decimal comma, as the dictionary says" : ""),
        "write the number alone, without unit or remark; if it means \"not recorded\", leave it"
            + " blank or list it under \"missing\" in the dictionary");
  }

  private static FieldValue ambiguous(String grouped, String decimal, String sign) {
    boolean severalGroups = decimal.indexOf('.') != decimal.lastIndexOf('.');
    String readings =
        severalGroups ? grouped : grouped + " or " + Plain.number(Double.parseDouble(decimal));
    return FieldValue.wrong(
        ProblemKind.AMBIGUOUS_NUMBER,
        "a number that reads one way only; this could be " + readings,
        "write thousands without \"" + sign + "\" and name the decimal sign in the dictionary");
  }

  private static boolean isWhole(String text) {
    return PLAIN.matcher(text).matches() && text.indexOf('.') < 0;
  }

  private static double value(String text) {
    return Double.parseDouble(text.replace(',', '.'));
  }
}
