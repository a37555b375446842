package org.taketally.wording.language;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.PropertyResourceBundle;
import java.util.ResourceBundle;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.taketally.terms.Interval;

/**
 * Texts of one language, filled with values. In a text <code>{0}</code> stands for the first value,
 * and <code>{0|graft|grafts}</code> for one of two words by whether that value is one. Apostrophes
 * stay as they are.
 */
public final class Phrases {

  private static final Map<Language, Phrases> ALL = new EnumMap<>(Language.class);

  private static final Pattern PLACE = Pattern.compile("\\{(\\d)(?:\\|([^|{}]*)\\|([^|{}]*))?}");

  static {
    for (Language language : Language.values()) {
      ALL.put(language, new Phrases(language, texts(language)));
    }
  }

  /** Between two columns whose levels vary together. */
  private static final String CROSSED = " × ";

  private final Language language;
  private final ResourceBundle texts;

  private Phrases(Language language, ResourceBundle texts) {
    this.language = language;
    this.texts = texts;
  }

  /**
   * The phrases of a language.
   *
   * @param language any
   * @return its phrases
   */
  public static Phrases in(Language language) {
    return ALL.get(language);
  }

  private static ResourceBundle texts(Language language) {
    String name = language.code() + ".properties";
    try (InputStream in = Phrases.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the toolkit's jar lacks " + name);
      }
      try (Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8)) {
        return new PropertyResourceBundle(reader);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The language they are in.
   *
   * @return the language
   */
  public Language language() {
    return language;
  }

  /**
   * A text filled with values.
   *
   * @param key of the text
   * @param values texts, or whole numbers, which are written as the language writes them
   * @return the filled text
   * @throws java.util.MissingResourceException if there is no such text
   */
  public String say(String key, Object... values) {
    return filled(texts.getString(key), values);
  }

  private String filled(String text, Object[] values) {
    return PLACE.matcher(text).replaceAll(place -> Matcher.quoteReplacement(filled(place, values)));
  }

  private String filled(MatchResult place, Object[] values) {
    Object value = values[Integer.parseInt(place.group(1))];
    if (place.group(2) != null) {
      return ((Number) value).longValue() == 1 ? place.group(2) : place.group(3);
    }
    return value instanceof Number number ? language.whole(number.longValue()) : value.toString();
  }

  /**
   * Headings of a table.
   *
   * @param key of a text that parts them by bars
   * @param values as in {@link #say}
   * @return one text per column
   */
  public List<String> headings(String key, Object... values) {
    return Stream.of(texts.getString(key).split(" \\| "))
        .map(text -> filled(text, values))
        .toList();
  }

  /**
   * A share as a whole percentage, but never rounded to certainty.
   *
   * @param share 0 to 1
   * @return e.g. {@code 63 %}, {@code under 1 %}, {@code over 99 %}
   */
  public String percent(double share) {
    if (share > 0 && share < 0.005) {
      return say("percent.under", 1);
    }
    if (share < 1 && share > 0.995) {
      return say("percent.over", 99);
    }
    return say("percent", Math.round(100 * share));
  }

  /**
   * A chance worked out by simulation, which is never certain.
   *
   * @param chance 0 to 1
   * @return e.g. {@code 97 %}, {@code under 1 %}, {@code over 99 %}
   */
  public String chance(double chance) {
    return percent(Math.min(Math.max(chance, 1e-9), 1 - 1e-9));
  }

  /**
   * A range of shares.
   *
   * @param range on 0 to 1
   * @return e.g. {@code 63 to 90 %}
   */
  public String percents(Interval range) {
    return say("percents", Math.round(100 * range.low()), Math.round(100 * range.high()));
  }

  /**
   * The size of a difference of takes in points, sign left off.
   *
   * @param difference -1 to 1
   * @return e.g. {@code 4 points}, {@code under 1 point}
   */
  public String points(double difference) {
    double size = 100 * Math.abs(difference);
    return size < 0.5 ? say("points.under", 1) : say("points", Math.round(size));
  }

  /**
   * An estimated difference of takes in points, sign left off.
   *
   * @param difference -1 to 1
   * @return e.g. {@code about 4 points}, {@code under 1 point}
   */
  public String aboutPoints(double difference) {
    String points = points(difference);
    return points.equals(say("points.under", 1)) ? points : say("points.about", points);
  }

  /**
   * A range of differences in points, with signs when it spans zero.
   *
   * @param range on -1 to 1
   * @return e.g. {@code 2 to 9 points} or {@code -3 to +5 points}
   */
  public String points(Interval range) {
    long low = Math.round(100 * range.low());
    long high = Math.round(100 * range.high());
    return range.low() >= 0
        ? say("points.range", low, high)
        : say("points.range", signed(low), signed(high));
  }

  private String signed(long points) {
    return points > 0 ? "+" + language.whole(points) : language.whole(points);
  }

  /**
   * A count as this language parts its thousands.
   *
   * @param count any whole number
   * @return e.g. {@code 4,782}
   */
  public String count(long count) {
    return language.whole(count);
  }

  /**
   * A number with its unit.
   *
   * @param value any number
   * @param unit as the records name it, e.g. {@code days}; may be empty
   * @return e.g. {@code 12 days}, {@code 7.5}
   */
  public String amount(double value, String unit) {
    String number =
        value == Math.rint(value) ? Long.toString((long) value) : language.oneDecimal(value);
    return unit.isEmpty() ? number : number + " " + unit(unit);
  }

  /**
   * A number with up to two decimals.
   *
   * @param value any finite number
   * @return e.g. {@code 7}, {@code 7.25}
   */
  public String number(double value) {
    return language.decimals(value);
  }

  /**
   * A unit in this language.
   *
   * @param unit as the records name it
   * @return its name; as it is if it has none here
   */
  public String unit(String unit) {
    return named("unit." + unit, unit);
  }

  /**
   * Names in a sentence.
   *
   * @param names any number
   * @return e.g. {@code A}, {@code A and B}, {@code A, B and C}
   */
  public String list(List<String> names) {
    return joined(names, "and");
  }

  /**
   * Names to choose from.
   *
   * @param names any number
   * @return e.g. {@code A}, {@code A or B}, {@code A, B or C}
   */
  public String either(List<String> names) {
    return joined(names, "or");
  }

  private String joined(List<String> names, String key) {
    int last = names.size() - 1;
    return last <= 0
        ? String.join("", names)
        : say(
            language.joint(key, names.get(last)),
            String.join(", ", names.subList(0, last)),
            names.get(last));
  }

  /**
   * A column's name in this language.
   *
   * @param column e.g. {@code stock_condition}
   * @return e.g. {@code stock condition}; as the records name it if it has no name here
   */
  public String column(String column) {
    return Stream.of(column.split(CROSSED))
        .map(part -> named("column." + part, part.replace('_', ' ')))
        .collect(Collectors.joining(CROSSED));
  }

  /**
   * A level of a column in this language.
   *
   * @param column e.g. {@code budwood_kept}
   * @param level e.g. {@code moist}
   * @return its name; as the records name it if it has none here
   */
  public String level(String column, String level) {
    return named("level." + column + "." + level.replace(' ', '-'), level);
  }

  private String named(String key, String otherwise) {
    return texts.containsKey(key) ? texts.getString(key) : otherwise;
  }

  /**
   * Text as a sentence: first letter in capitals.
   *
   * @param text any text
   * @return e.g. {@code Rootstock Nerrin was used ...}
   */
  public String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(language.locale()) + text.substring(1);
  }
}
