package org.taketally.app;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.regex.Pattern;
import org.taketally.plan.size.VerdictChances;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Whole numbers and dates as typed; what is wrong with them in words.
 *
 * <p>Classes with names, because Java 17 breaks off while it writes an archive for quicker starts
 * that holds lambdas of an interface compiled for an old Java, as the option parser's are.
 */
final class TypedValues {

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+[.]?\\d*|[.]\\d+)([eE][+-]?\\d+)?");

  private TypedValues() {}

  /** Whole numbers. */
  static final class Whole implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String typed) {
      try {
        return Integer.valueOf(typed.strip());
      } catch (NumberFormatException notWhole) {
        throw new TypeConversionException(
            "found \"%s\", expected a whole number, e.g. 20".formatted(typed));
      }
    }
  }

  /** Whole numbers of 1 or more. */
  static final class Count implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String typed) {
      int count = new Whole().convert(typed);
      if (count < 1) {
        throw new TypeConversionException(
            "found \"%s\", expected a whole number of 1 or more, e.g. 20".formatted(typed));
      }
      return count;
    }
  }

  /** Trials made up to see how often something comes: as many as say more than that it may be. */
  static final class Trials implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String typed) {
      int trials = new Whole().convert(typed);
      if (trials < VerdictChances.LEAST_TRIALS) {
        throw new TypeConversionException(
            "found \"%s\", expected %d or more, e.g. 100: fewer leave a chance open by some 30 points"
                .formatted(typed, VerdictChances.LEAST_TRIALS));
      }
      return trials;
    }
  }

  /** Numbers that needn't be whole. */
  static final class Decimal implements ITypeConverter<Double> {
    @Override
    public Double convert(String typed) {
      return number(typed).orElseThrow(() -> wrong(typed, "a number, e.g. 2.5"));
    }
  }

  /** A number typed with digits and a decimal point; empty if it is anything else. */
  static Optional<Double> number(String typed) {
    String digits = typed.strip();
    return NUMBER.matcher(digits).matches()
        ? Optional.of(Double.valueOf(digits)).filter(Double::isFinite)
        : Optional.empty();
  }

  /** What was typed isn't what was expected; of a decimal comma it is said how to type it. */
  static TypeConversionException wrong(String typed, String expected) {
    String pointed = typed.strip().replace(',', '.');
    return new TypeConversionException(
        "found \"%s\", expected %s%s"
            .formatted(
                typed,
                expected,
                typed.contains(",") && number(pointed).isPresent()
                    ? "; decimals are typed with a point: " + pointed
                    : ""));
  }

  /** Dates. */
  static final class Day implements ITypeConverter<LocalDate> {
    @Override
    public LocalDate convert(String typed) {
      try {
        return LocalDate.parse(typed.strip());
      } catch (DateTimeParseException notADay) {
        throw new TypeConversionException(
            "found \"%s\", expected a date as year-month-day, e.g. 2027-04-15".formatted(typed));
      }
    }
  }
}
