package org.taketally.notebook.display;

import java.lang.reflect.Array;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.Band;
import org.taketally.answers.verdict.Verdict;
import org.taketally.terms.Interval;
import org.taketally.wording.Names;

/** Any value in a few words, for a cell of a table: numbers with four digits, long lists cut. */
final class Brief {

  private static final int ITEMS = 6;
  private static final int LONGEST = 100;
  private static final int DIGITS = 4;

  /** Numbers of so many digits and fewer stay as they are. */
  private static final int TYPED = 6;

  private static final double WHOLE = 1000;
  private static final int LONGEST_SCALE = 9;
  private static final String NONE = "none";

  private Brief() {}

  static String of(Object value) {
    String text = whole(value).replace('\n', ' ').strip();
    return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 1) + "\u2026";
  }

  private static String whole(Object value) {
    if (value == null) {
      return NONE;
    }
    if (value instanceof Double || value instanceof Float) {
      return number(((Number) value).doubleValue());
    }
    if (value instanceof Number count) {
      return count instanceof Integer || count instanceof Long
          ? "%,d".formatted(count.longValue())
          : count.toString();
    }
    if (value instanceof Verdict verdict) {
      return Names.of(verdict);
    }
    if (value instanceof Band band) {
      return Names.of(band);
    }
    if (value instanceof Enum<?> constant) {
      return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
    if (value instanceof Collection<?> items) {
      return list(items.stream().limit(ITEMS).toList(), items.size());
    }
    if (value instanceof Map<?, ?> map) {
      return list(map.entrySet().stream().limit(ITEMS).toList(), map.size());
    }
    if (value instanceof Map.Entry<?, ?> entry) {
      return of(entry.getKey()) + ": " + of(entry.getValue());
    }
    if (value.getClass().isArray()) {
      int size = Array.getLength(value);
      return list(
          IntStream.range(0, Math.min(ITEMS, size)).mapToObj(i -> Array.get(value, i)).toList(),
          size);
    }
    return value instanceof Record record ? record(record) : held(value);
  }

  private static String held(Object value) {
    if (value instanceof Optional<?> held) {
      return of(held.orElse(null));
    }
    if (value instanceof OptionalDouble held) {
      return of(held.isPresent() ? held.getAsDouble() : null);
    }
    if (value instanceof OptionalLong held) {
      return of(held.isPresent() ? held.getAsLong() : null);
    }
    if (value instanceof OptionalInt held) {
      return of(held.isPresent() ? held.getAsInt() : null);
    }
    String text = value.toString();
    return text.startsWith(value.getClass().getName() + "@")
        ? Parts.words(value.getClass().getSimpleName())
        : text;
  }

  /** As it is if it is short, as most numbers that were typed are; else with four digits. */
  static String number(double value) {
    if (Double.isNaN(value)) {
      return NONE;
    }
    if (Double.isInfinite(value)) {
      return value > 0 ? "\u221e" : "-\u221e";
    }
    BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
    boolean whole = Math.abs(value) >= WHOLE && exact.scale() > 0 && exact.precision() > TYPED;
    BigDecimal shown =
        whole
            ? exact.setScale(0, RoundingMode.HALF_EVEN)
            : exact.precision() > TYPED
                ? exact.round(new MathContext(DIGITS)).stripTrailingZeros()
                : exact;
    return shown.scale() > LONGEST_SCALE || shown.precision() - shown.scale() > LONGEST_SCALE
        ? shown.toString()
        : shown.toPlainString();
  }

  private static String list(List<?> first, int size) {
    List<String> words = new ArrayList<>();
    first.forEach(each -> words.add(of(each)));
    if (size > first.size()) {
      words.add("and %,d more".formatted(size - first.size()));
    }
    return words.isEmpty() ? NONE : String.join(", ", words);
  }

  private static String record(Record record) {
    if (record instanceof Interval range) {
      return "%s to %s (%s %%)"
          .formatted(number(range.low()), number(range.high()), number(100 * range.coverage()));
    }
    if (record instanceof Estimate estimate) {
      return "%s (%s to %s)"
          .formatted(number(estimate.value()), number(estimate.low()), number(estimate.high()));
    }
    if (record instanceof TakeCount count) {
      return "%,d of %,d".formatted(count.takes(), count.grafts());
    }
    List<String> parts = new ArrayList<>();
    for (RecordComponent part : Parts.of(record.getClass())) {
      parts.add(Parts.words(part.getName()) + " " + of(Parts.value(record, part)));
    }
    return String.join("; ", parts);
  }
}
