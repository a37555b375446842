package org.taketally.records.columns;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Results that stand side by side in a row, as far as headings show: a set of columns for each
 * grafter, stock or season, or counts of the same grafts on several days. They serve for questions
 * only; nothing is read by them.
 */
public final class SideBySide {

  private static final Pattern YEAR = Pattern.compile("(?:19|20)\\d{2}|[12]\\d");
  private static final String DAY_WORDS = "d|days?|tage?n?|j|jours?|gg|d[ií]as?|giorni|dias";
  private static final Pattern COUNTING_DAY =
      Pattern.compile("(?i).*?(\\d{2,3})\\s*-?(?:" + DAY_WORDS + ")\\b.*");
  private static final Pattern DAY_FIRST =
      Pattern.compile("(?i)(?:.*\\P{L})?(?:day|tag|jour|d[ií]a|giorno)\\s*(\\d{2,3})\\b.*");
  private static final Pattern CALENDAR_DAY =
      Pattern.compile("\\d{1,2}[./-]\\d{1,2}[./-](?:\\d{4}|\\d{2})?|\\d{4}-\\d{2}-\\d{2}");
  private static final Pattern FOUR_DIGITS = Pattern.compile("\\d{4}");
  private static final Set<String> RESULTS =
      Set.of(
          RecordColumn.GRAFTS.columnName(),
          RecordColumn.TAKES.columnName(),
          RecordColumn.OUTCOME.columnName());
  private static final Set<String> LINKS =
      Set.of("by", "on", "von", "auf", "par", "sur", "por", "con", "su", "sobre");

  private SideBySide() {}

  /**
   * Sets of columns whose headings are a name and a word for grafts or a result.
   *
   * @param headings of a sheet, perhaps without those that are understood already
   * @return a name (such as a grafter or a season of four digits) to our columns and their
   *     headings; none but those with a result, and none at all if there are not several
   */
  public static Map<String, Map<String, String>> parts(List<String> headings) {
    Map<String, Map<String, String>> parts = new LinkedHashMap<>();
    for (String heading : headings) {
      if (CommonWords.columns(heading).isEmpty() && countingDay(heading).isEmpty()) {
        part(heading, parts);
      }
    }
    parts.values().removeIf(part -> part.keySet().equals(Set.of(RecordColumn.GRAFTS.columnName())));
    return parts.size() > 1 ? parts : Map.of();
  }

  /** Whether names of {@link #parts} are seasons. */
  public static boolean seasons(Set<String> names) {
    return names.stream().allMatch(name -> YEAR.matcher(name).matches());
  }

  /** The name and the word are parted where the longest word known is left. */
  private static void part(String heading, Map<String, Map<String, String>> parts) {
    List<String> words =
        Arrays.stream(heading.split("[\\s_/:()\\[\\]–-]+")).filter(w -> !w.isEmpty()).toList();
    for (int known = words.size() - 1; known > 0; known--) {
      int rest = words.size() - known;
      if (add(words.subList(rest, words.size()), words.subList(0, rest), heading, parts)
          || add(words.subList(0, known), words.subList(known, words.size()), heading, parts)) {
        return;
      }
    }
  }

  private static boolean add(
      List<String> word,
      List<String> named,
      String heading,
      Map<String, Map<String, String>> parts) {
    String ours =
        CommonWords.columns(String.join(" ", word)).stream()
            .filter(RESULTS::contains)
            .findFirst()
            .orElse("");
    String name =
        named.stream().filter(one -> !LINKS.contains(one)).collect(Collectors.joining(" "));
    boolean isName = name.matches("\\p{L}.*") || YEAR.matcher(name).matches();
    if (ours.isEmpty() || !isName || TotalWords.isTotal(name)) {
      return false;
    }
    String full = name.matches("\\d\\d") ? "20" + name : name;
    parts.computeIfAbsent(full, n -> new LinkedHashMap<>()).putIfAbsent(ours, heading);
    return true;
  }

  /** The day after grafting on which a column was counted, if its heading says one. */
  public static OptionalInt countingDay(String heading) {
    for (Pattern pattern : List.of(COUNTING_DAY, DAY_FIRST)) {
      Matcher day = pattern.matcher(heading);
      if (day.matches()) {
        return OptionalInt.of(Integer.parseInt(day.group(1)));
      }
    }
    return OptionalInt.empty();
  }

  /**
   * Columns counted on several days of the calendar: a word for takes and a day each.
   *
   * @param headings of a sheet
   * @return in their order; empty if there are not several, or of several years
   */
  public static List<String> calendarDays(List<String> headings) {
    List<String> counted =
        headings.stream()
            .filter(heading -> CALENDAR_DAY.matcher(heading).find())
            .filter(
                heading ->
                    CommonWords.columns(CALENDAR_DAY.matcher(heading).replaceAll(" ").strip())
                        .contains(RecordColumn.TAKES.columnName()))
            .toList();
    long years =
        counted.stream()
            .map(heading -> FOUR_DIGITS.matcher(heading))
            .filter(Matcher::find)
            .map(Matcher::group)
            .distinct()
            .count();
    return counted.size() > 1 && years < 2 ? counted : List.of();
  }

  /**
   * Columns counted on several days after grafting.
   *
   * @param headings of a sheet
   * @return day to heading; empty if there are not several
   */
  public static Map<Integer, String> countingDays(List<String> headings) {
    Map<Integer, String> days = new TreeMap<>();
    headings.forEach(
        heading -> countingDay(heading).ifPresent(day -> days.putIfAbsent(day, heading)));
    return days.size() > 1 ? days : Map.of();
  }
}
