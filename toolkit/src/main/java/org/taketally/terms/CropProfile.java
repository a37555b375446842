package org.taketally.terms;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is usual for a crop: storage of its budwood, days to assessment, take. Each value has its
 * source, or says that it is common practice or from memory. Values outside are reasons to look,
 * never proof of a fault.
 */
public final class CropProfile {

  /** What a profile may say. */
  public enum Item {
    /** Name of the crop. */
    CROP("text"),
    /** Version of the profile, to be kept with results. */
    VERSION("text"),
    /** What cold does to its budwood: {@code chilling} or {@code freezing}. */
    COLD_HARM("text"),
    /** Bud stage most grafters prefer. */
    PREFERRED_BUD_STAGE("text"),
    /** Method most grafters start with. */
    USUAL_METHOD("text"),
    /** Storage below this is a reason to look. */
    STORAGE_TEMP_MIN("°C"),
    /** Storage above this is a reason to look. */
    STORAGE_TEMP_MAX("°C"),
    /** Storage beyond this is longer than is best. */
    STORAGE_DAYS_BEST("days"),
    /** Storage beyond this is a reason to look. */
    STORAGE_DAYS_LIMIT("days"),
    /** Earliest day on which an early take can be told. */
    ASSESS_EARLY("days"),
    /** Day from which a take counts as final. */
    ASSESS_FINAL("days"),
    /** More grafts in one row are a reason to look. */
    BATCH_GRAFTS_MAX("grafts"),
    /** A share of takes over all records below this is a reason to look. */
    TAKE_LOW("share"),
    /** A share of takes over all records above this is a reason to look. */
    TAKE_HIGH("share"),
    /** Share of early takes usually lost later, lower end. */
    LATE_LOSS_LOW("share"),
    /** Share of early takes usually lost later, upper end. */
    LATE_LOSS_HIGH("share");

    private final String unit;

    Item(String unit) {
      this.unit = unit;
    }

    /**
     * Its unit.
     *
     * @return {@code text} for words
     */
    public String unit() {
      return unit;
    }

    /**
     * Whether it is a number.
     *
     * @return false for words
     */
    public boolean isNumber() {
      return !unit.equals("text");
    }
  }

  /**
   * A value and where it comes from.
   *
   * @param text the value as written
   * @param source a citation, {@code common practice, no source}, or {@code from memory}
   */
  public record Value(String text, String source) {

    public Value {
      if (text.isBlank() || source.isBlank()) {
        throw new IllegalArgumentException("a value of a crop profile needs a text and a source");
      }
    }
  }

  private final Map<Item, Value> values;

  /**
   * A profile.
   *
   * @param values what is known; {@link Item#CROP} and {@link Item#VERSION} are needed
   * @throws IllegalArgumentException if one of these is absent, or a number isn't one
   */
  public CropProfile(Map<Item, Value> values) {
    this.values = new EnumMap<>(values);
    for (Item needed : new Item[] {Item.CROP, Item.VERSION}) {
      if (!this.values.containsKey(needed)) {
        throw new IllegalArgumentException("a crop profile needs " + needed);
      }
    }
    this.values.forEach(
        (item, value) -> {
          if (item.isNumber() && !Double.isFinite(parse(item, value))) {
            throw new IllegalArgumentException(item + " must be a number, got " + value.text());
          }
        });
  }

  private static double parse(Item item, Value value) {
    try {
      return Double.parseDouble(value.text());
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(item + " must be a number, got " + value.text(), e);
    }
  }

  /**
   * A value with its source.
   *
   * @param item which one
   * @return the value, if the profile has it
   */
  public Optional<Value> value(Item item) {
    return Optional.ofNullable(values.get(item));
  }

  /**
   * A value that is words.
   *
   * @param item which one
   * @return the words, or empty text if the profile is silent
   */
  public String words(Item item) {
    return value(item).map(Value::text).orElse("");
  }

  /**
   * A value that is a number.
   *
   * @param item which one
   * @return in the unit of the item, if the profile has it
   * @throws IllegalArgumentException if the item is words
   */
  public OptionalDouble number(Item item) {
    if (!item.isNumber()) {
      throw new IllegalArgumentException(item + " is not a number");
    }
    Value value = values.get(item);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(parse(item, value));
  }

  /**
   * Name of the crop.
   *
   * @return e.g. {@code avocado}
   */
  public String crop() {
    return words(Item.CROP);
  }

  @Override
  public String toString() {
    return crop() + " profile, version " + words(Item.VERSION);
  }
}
