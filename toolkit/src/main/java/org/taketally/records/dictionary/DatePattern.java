package org.taketally.records.dictionary;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A pattern of dates, read strictly: no 31 June. Two-digit years are 2000 to 2099. The pattern
 * {@code day-number} is the count of days that spreadsheets keep behind a date (day 1 is
 * 1900-01-01, with the leap day of 1900 that never was). Names of months, whole or cut short, are
 * those of six languages.
 */
public final class DatePattern {

  public static final String DAY_NUMBER = "day-number";

  /** Ways to write a day with the name of its month; one reads it whole or cut short. */
  public static final List<String> WITH_MONTH_NAMES =
      List.of("d MMM yyyy", "d. MMM yyyy", "d-MMM-yyyy", "d-MMM-yy", "d MMM yy", "MMM d, yyyy");

  private static final LocalDate DAY_ZERO = LocalDate.of(1899, 12, 30);
  private static final int CENTURY = 2000;

  private final String pattern;
  private final DateTimeFormatter formatter;
  private final boolean inWords;

  private DatePattern(String pattern, DateTimeFormatter formatter) {
    this.pattern = pattern;
    this.formatter = formatter;
    this.inWords = pattern.contains("MMM");
  }

  /** The pattern, if it has a day, a month and a year and nothing else. */
  public static Optional<DatePattern> of(String pattern) {
    if (pattern.equals(DAY_NUMBER)) {
      return Optional.of(new DatePattern(pattern, null));
    }
    String letters = pattern.replaceAll("[^A-Za-z]", "");
    boolean whole =
        letters.matches("(?=.*d)(?=.*M)(?=.*y)[dMy]+")
            && letters.replaceAll("(.)\\1*", "$1").length() == 3
            && letters.matches(".*(?<!y)(yy|yyyy)(?!y).*")
            && letters.matches(".*(?<!d)dd?(?!d).*")
            && letters.matches(".*(?<!M)M{1,4}(?!M).*");
    boolean apart = pattern.indexOf("yy") < 0 || !pattern.matches("[^{}\\[\\]#']*");
    return whole && !apart
        ? Optional.of(new DatePattern(pattern, formatter(pattern.replaceAll("MMMM?", "M"))))
        : Optional.empty();
  }

  /** The pattern with day and month the other way round, where both are numbers. */
  public static Optional<DatePattern> otherOrder(String pattern) {
    if (pattern.contains("MMM") || pattern.equals(DAY_NUMBER)) {
      return Optional.empty();
    }
    return of(pattern.replace('d', '#').replace('M', 'd').replace('#', 'M'));
  }

  private static DateTimeFormatter formatter(String pattern) {
    DateTimeFormatterBuilder builder = new DateTimeFormatterBuilder().parseCaseInsensitive();
    int year = pattern.indexOf("yy");
    int years = pattern.startsWith("yyyy", year) ? 4 : 2;
    append(builder, pattern.substring(0, year));
    if (years == 4) {
      builder.appendValue(ChronoField.YEAR, 4);
    } else {
      builder.appendValueReduced(ChronoField.YEAR, 2, 2, CENTURY);
    }
    append(builder, pattern.substring(year + years));
    return builder.toFormatter(Locale.ENGLISH).withResolverStyle(ResolverStyle.STRICT);
  }

  private static void append(DateTimeFormatterBuilder builder, String part) {
    if (!part.isEmpty()) {
      builder.appendPattern(part);
    }
  }

  /** The day a text means in this pattern, if it fits. */
  public Optional<LocalDate> read(String text) {
    try {
      return Optional.of(
          formatter == null
              ? DAY_ZERO.plusDays(Integer.parseInt(text))
              : LocalDate.parse(inWords ? MonthNames.inNumbers(text) : text, formatter));
    } catch (DateTimeException | NumberFormatException e) {
      return Optional.empty();
    }
  }

  @Override
  public String toString() {
    return pattern;
  }
}
