package org.taketally.records;

import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.DatePattern;
import org.taketally.terms.Plural;

/** Proposes how the days of a column are written: the pattern that reads nearly all of them. */
final class ProposedDays {

  private static final double NEARLY_ALL = 0.9;
  private static final List<String> ORDERS =
      List.of("d%1$sM%1$syyyy", "M%1$sd%1$syyyy", "d%1$sM%1$syy", "M%1$sd%1$syy");
  private static final List<String> SEPARATORS = List.of(".", "/", "-", " ");

  private final ProposedSheet sheet;

  ProposedDays(ProposedSheet sheet) {
    this.sheet = sheet;
  }

  /** Patterns of three numbers, day first and month first. */
  static Stream<String> inNumbers() {
    return SEPARATORS.stream()
        .flatMap(separator -> ORDERS.stream().map(order -> order.formatted(separator)));
  }

  static boolean reads(String pattern, String text) {
    return DatePattern.of(pattern).flatMap(p -> p.read(text)).isPresent();
  }

  /** Adds the pattern to the entry of a column, or asks for it. */
  void propose(RecordColumn column, String heading, JsonObject entry) {
    Set<String> texts =
        sheet.values(heading).counts().keySet().stream()
            .filter(text -> text.matches(".*\\d.*")) // others are words, such as one for totals
            .filter(text -> !text.matches("\\d{4}-\\d{2}-\\d{2}.*"))
            .collect(Collectors.toCollection(LinkedHashSet::new));
    if (texts.isEmpty()) {
      return;
    }
    Map<String, Long> fit = fit(texts);
    Optional<String> best =
        fit.keySet().stream()
            .max(Comparator.comparingLong(fit::get))
            .filter(b -> isClear(b, fit, texts));
    if (best.isPresent()) {
      entry.addProperty("dates", best.get());
      sheet.because(
          "%,d of %s under \"%s\" read as %s",
          fit.get(best.get()), Plural.of(texts.size(), "day"), heading, best.get());
    } else {
      ask(column, heading, fit, texts);
    }
  }

  /** How many days each pattern reads, of those that read any. */
  private static Map<String, Long> fit(Set<String> texts) {
    boolean words = texts.stream().anyMatch(text -> text.matches(".*\\p{L}{3}.*"));
    Map<String, Long> fit = new LinkedHashMap<>();
    Stream.concat(inNumbers(), words ? DatePattern.WITH_MONTH_NAMES.stream() : Stream.empty())
        .forEach(
            pattern -> {
              long read = texts.stream().filter(text -> reads(pattern, text)).count();
              if (read > 0) {
                fit.put(pattern, read);
              }
            });
    return fit;
  }

  /** Whether a pattern reads nearly all days and every other reads fewer. */
  private static boolean isClear(String pattern, Map<String, Long> fit, Set<String> texts) {
    return fit.get(pattern) >= NEARLY_ALL * texts.size()
        && fit.entrySet().stream()
            .allMatch(o -> o.getKey().equals(pattern) || o.getValue() < fit.get(pattern));
  }

  private void ask(RecordColumn column, String heading, Map<String, Long> fit, Set<String> texts) {
    OpenQuestion question =
        sheet.ask(
            "days under \"%s\" (such as %s) %s; add \"dates\" to that column",
            heading, texts.iterator().next(), readings(fit, texts));
    fit.forEach(
        (pattern, read) ->
            question.choice(
                "%s (%,d of %,d)".formatted(pattern, read, texts.size()),
                new JsonPrimitive(pattern),
                "columns",
                column.columnName(),
                "dates"));
  }

  private static String readings(Map<String, Long> fit, Set<String> texts) {
    return fit.isEmpty()
        ? "read in no pattern tried"
        : fit.entrySet().stream()
            .map(
                one ->
                    "%,d of %,d read as %s".formatted(one.getValue(), texts.size(), one.getKey()))
            .collect(Collectors.joining(", "));
  }
}
