package org.taketally.app;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.stream.IntStream;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Days of a trial as typed: how many, or their dates. */
final class TrialDays {

  private static final int MOST = 366;

  private TrialDays() {}

  /** Names of the days, e.g. day 1, or dates. */
  static List<String> names(CommandLine command, List<String> typed) {
    if (typed.size() == 1 && typed.get(0).matches("[1-9]\\d{0,2}")) {
      int count = Integer.parseInt(typed.get(0));
      if (count <= MOST) {
        return IntStream.rangeClosed(1, count).mapToObj(day -> "day " + day).toList();
      }
    }
    for (String day : typed) {
      if (!isDate(day)) {
        throw new ParameterException(
            command,
            "--days: found \"%s\", expected a whole number of days from 1 to %d, or dates as year-month-day parted by commas; write e.g. 3, or 2027-03-01,2027-03-08"
                .formatted(day, MOST));
      }
    }
    return typed;
  }

  private static boolean isDate(String typed) {
    try {
      return typed.matches("\\d{4}-.*") && LocalDate.parse(typed) != null;
    } catch (DateTimeParseException notADate) {
      return false;
    }
  }
}
