package org.taketally.records.rows;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.taketally.records.dictionary.DatePattern;
import org.taketally.records.problems.Finding;
import org.taketally.records.problems.ProblemKind;

/**
 * Reads dates: yyyy-MM-dd always, and the pattern of the dictionary. A date that could be read two
 * ways is never read; the problem names both.
 */
public final class DateNotation {

  private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
  private static final Pattern ISO_TIME =
      Pattern.compile("(\\d{4}-\\d{2}-\\d{2})[T ]\\d{2}:\\d{2}.*");
  private static final Pattern MIDNIGHT = Pattern.compile("[T ]00:00(:00(\\.0*)?)?Z?$");
  private static final Pattern THREE_NUMBERS =
      Pattern.compile("(\\d{1,4})([./ -])(\\d{1,2})\\2(\\d{1,4})");
  private static final List<String> ORDERS = List.of("d/M/y", "M/d/y", "y/M/d");
  private static final Pattern DAY_NUMBER = Pattern.compile("[3-6]\\d{4}");
  private static final int FIRST_YEAR = 1900;
  private static final int LAST_YEAR = 2199;
  private static final DateTimeFormatter IN_WORDS =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

  private final Optional<DatePattern> declared;
  private final Optional<DatePattern> other;
  private final SheetSurvey.Example shown;

  /**
   * A way of writing days.
   *
   * @param pattern of the dictionary, if it names one
   * @param shown a value of the same column that reads only with day and month the other way round,
   *     so that those that read both ways are in doubt; none if there is no such value
   */
  DateNotation(Optional<String> pattern, Optional<SheetSurvey.Example> shown) {
    this.declared = pattern.flatMap(DatePattern::of);
    this.other = shown.flatMap(example -> pattern).flatMap(DatePattern::otherOrder);
    this.shown = shown.orElse(null);
  }

  /**
   * A day written in a list to plan by.
   *
   * @param day empty if it can't be read
   * @param expected what would have been right
   * @param remedy what to say in the dictionary, if it can be read so; else empty
   */
  public record Day(Optional<LocalDate> day, String expected, String remedy) {}

  /**
   * Reads a day of a list to plan by.
   *
   * @param text as typed
   * @param pattern of the dictionary, if it names one
   */
  public static Day day(String text, Optional<String> pattern) {
    FieldValue value = new DateNotation(pattern, Optional.empty()).read(text);
    Finding finding = value.finding();
    return value.isError()
        ? new Day(
            Optional.empty(),
            finding.expected(),
            finding.kind() == ProblemKind.NOT_A_DATE ? "" : finding.remedy())
        : new Day(Optional.of(LocalDate.ofEpochDay(value.code())), "", "");
  }

  FieldValue read(String text) {
    Matcher iso = ISO.matcher(text);
    if (iso.matches()) {
      return iso(iso);
    }
    Matcher time = ISO_TIME.matcher(text);
    if (time.matches()) {
      FieldValue day = read(time.group(1));
      return day.finding() != null || MIDNIGHT.matcher(text).find()
          ? day
          : day.with(
              new Finding(
                  ProblemKind.TIME_DROPPED,
                  "a date without a time",
                  "only the date was used; nothing to do"));
    }
    return declared.isPresent() ? inPattern(text, declared.get()) : undeclared(text);
  }

  private static FieldValue iso(Matcher parts) {
    try {
      return day(
          LocalDate.of(
              Integer.parseInt(parts.group(1)),
              Integer.parseInt(parts.group(2)),
              Integer.parseInt(parts.group(3))));
    } catch (DateTimeException e) {
      return notADate("a day that exists, as yyyy-MM-dd", "correct the date");
    }
  }

  private FieldValue inPattern(String text, DatePattern pattern) {
    Optional<LocalDate> day = pattern.read(text);
    if (day.isPresent()) {
      Optional<LocalDate> turned =
          other.flatMap(o -> o.read(text)).filter(d -> !day.get().equals(d));
      return turned.isPresent() ? inDoubt(day.get(), turned.get()) : day(day.get());
    }
    String other =
        readings(text).entrySet().stream()
            .map(reading -> " (as " + reading.getKey() + " it would be " + reading.getValue() + ")")
            .findFirst()
            .orElse("");
    return notADate(
        "a date as " + pattern + ", as the dictionary says", "correct the date" + other);
  }

  private FieldValue inDoubt(LocalDate day, LocalDate turned) {
    return FieldValue.wrong(
        ProblemKind.AMBIGUOUS_DATE,
        "a day that reads one way only; this could be %s (%s) or %s (%s), because \"%s\" on line %d reads only as %s"
            .formatted(
                IN_WORDS.format(day),
                declared.orElseThrow(),
                IN_WORDS.format(turned),
                other.orElseThrow(),
                shown.text(),
                shown.line(),
                other.orElseThrow()),
        "if that line is a slip, correct it there and read the sheet again; else write the days of"
            + " this column as yyyy-MM-dd");
  }

  private static FieldValue undeclared(String text) {
    Map<String, String> readings = readings(text);
    Map<String, String> distinct = new LinkedHashMap<>();
    readings.forEach(
        (pattern, day) -> {
          if (!distinct.containsValue(day)) {
            distinct.put(pattern, day);
          }
        });
    if (distinct.size() > 1) {
      return FieldValue.wrong(
          ProblemKind.AMBIGUOUS_DATE,
          "a date that reads one way only; this could be " + either(distinct),
          "say which in the dictionary, e.g. \"dates\": \""
              + distinct.keySet().iterator().next()
              + "\"");
    }
    if (distinct.size() == 1) {
      Map.Entry<String, String> only = distinct.entrySet().iterator().next();
      return FieldValue.wrong(
          ProblemKind.UNDECLARED_DATE,
          "a date as yyyy-MM-dd; this would be " + only.getValue(),
          "name the pattern in the dictionary: \"dates\": \"" + only.getKey() + "\"");
    }
    return notADate(
        THREE_NUMBERS.matcher(text).matches()
            ? "a day that exists, as yyyy-MM-dd"
            : "a date as yyyy-MM-dd",
        "correct the date, or leave it blank");
  }

  private static String either(Map<String, String> readings) {
    return readings.entrySet().stream()
        .map(reading -> reading.getValue() + " (" + reading.getKey() + ")")
        .collect(Collectors.joining(" or "));
  }

  /** Pattern to day in words, for each way of reading three numbers or a day number. */
  private static Map<String, String> readings(String text) {
    Map<String, String> readings = new LinkedHashMap<>();
    Matcher numbers = THREE_NUMBERS.matcher(text);
    if (numbers.matches()) {
      for (String order : ORDERS) {
        String pattern = pattern(order, numbers);
        DatePattern.of(pattern)
            .flatMap(p -> p.read(text))
            .ifPresent(day -> readings.put(pattern, IN_WORDS.format(day)));
      }
      return readings;
    }
    List<String> patterns =
        DAY_NUMBER.matcher(text).matches()
            ? List.of(DatePattern.DAY_NUMBER)
            : DatePattern.WITH_MONTH_NAMES;
    for (String pattern : patterns) {
      DatePattern.of(pattern)
          .flatMap(p -> p.read(text))
          .ifPresent(day -> readings.put(pattern, IN_WORDS.format(day)));
    }
    return readings;
  }

  private static String pattern(String order, Matcher numbers) {
    boolean yearFirst = order.startsWith("y");
    String year = yearFirst ? numbers.group(1) : numbers.group(4);
    String other = yearFirst ? numbers.group(4) : numbers.group(1);
    String pattern = order.replace("y", year.length() == 4 ? "yyyy" : "yy");
    if (other.length() == 2 && numbers.group(3).length() == 2) {
      pattern = pattern.replace("d", "dd").replace("M", "MM");
    }
    return pattern.replace("/", numbers.group(2));
  }

  private static FieldValue notADate(String expected, String remedy) {
    return FieldValue.wrong(ProblemKind.NOT_A_DATE, expected, remedy);
  }

  private static FieldValue day(LocalDate day) {
    if (day.getYear() < FIRST_YEAR || day.getYear() > LAST_YEAR) {
      return notADate("a year from %d to %d".formatted(FIRST_YEAR, LAST_YEAR), "correct the year");
    }
    return FieldValue.code((int) day.toEpochDay());
  }
}
