package org.taketally.app;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Whole numbers and dates as typed; what is wrong with them in words.
 *
 * <p>Classes with names, because Java 17 breaks off while it writes an archive for quicker starts
 * that holds lambdas of an interface compiled for an old Java, as the option parser's are.
 */
final class TypedValues {

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
