package org.taketally.app;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import picocli.CommandLine.TypeConversionException;

/** Whole numbers and dates as typed; what is wrong with them in words. */
final class TypedValues {

  private TypedValues() {}

  static Integer whole(String typed) {
    try {
      return Integer.valueOf(typed.strip());
    } catch (NumberFormatException notWhole) {
      throw new TypeConversionException(
          "found \"%s\", expected a whole number, e.g. 20".formatted(typed));
    }
  }

  static LocalDate day(String typed) {
    try {
      return LocalDate.parse(typed.strip());
    } catch (DateTimeParseException notADay) {
      throw new TypeConversionException(
          "found \"%s\", expected a date as year-month-day, e.g. 2027-04-15".formatted(typed));
    }
  }
}
