package org.taketally.wording;

import java.util.List;
import java.util.Locale;
import org.taketally.answers.Estimate;
import org.taketally.terms.Interval;

/** Numbers in plain words, the same way everywhere. */
public final class Words {

  private Words() {}

  /**
   * A share as a whole percentage, but never rounded to certainty.
   *
   * @param share 0 to 1
   * @return e.g. {@code 63 %}, {@code under 1 %}, {@code over 99 %}
   */
  public static String percent(double share) {
    if (share > 0 && share < 0.005) {
      return "under 1 %";
    }
    if (share < 1 && share > 0.995) {
      return "over 99 %";
    }
    return whole(100 * share) + " %";
  }

  /**
   * A chance worked out by simulation, which is never certain.
   *
   * @param chance 0 to 1
   * @return e.g. {@code 97 %}, {@code under 1 %}, {@code over 99 %}
   */
  public static String chance(double chance) {
    return percent(Math.min(Math.max(chance, 1e-9), 1 - 1e-9));
  }

  /**
   * A range of shares.
   *
   * @param range on 0 to 1
   * @return e.g. {@code 63 to 90 %}
   */
  public static String percents(Interval range) {
    return whole(100 * range.low()) + " to " + whole(100 * range.high()) + " %";
  }

  /**
   * A take with its likely range.
   *
   * @param estimate on 0 to 1
   * @return e.g. {@code about 80 % (likely 63 to 90 %)}
   */
  public static String take(Estimate estimate) {
    return "about %s (likely %s)"
        .formatted(percent(estimate.value()), percents(estimate.interval()));
  }

  /**
   * The size of a difference of takes in points, sign left off.
   *
   * @param difference -1 to 1
   * @return e.g. {@code 4 points}, {@code under 1 point}
   */
  public static String points(double difference) {
    double size = 100 * Math.abs(difference);
    if (size < 0.5) {
      return "under 1 point";
    }
    return whole(size) + (Math.round(size) == 1 ? " point" : " points");
  }

  /**
   * A range of differences in points, with signs when it spans zero.
   *
   * @param range on -1 to 1
   * @return e.g. {@code 2 to 9 points} or {@code -3 to +5 points}
   */
  public static String points(Interval range) {
    double low = 100 * range.low();
    double high = 100 * range.high();
    if (low >= 0) {
      return whole(low) + " to " + whole(high) + " points";
    }
    return signed(low) + " to " + signed(high) + " points";
  }

  /**
   * A count with thousands parted by commas.
   *
   * @param count any whole number
   * @return e.g. {@code 4,782}
   */
  public static String count(long count) {
    return String.format(Locale.ROOT, "%,d", count);
  }

  /**
   * A count with its noun.
   *
   * @param count any whole number
   * @param noun in the singular, plural by adding s
   * @return e.g. {@code 1 graft}, {@code 4,782 grafts}
   */
  public static String count(long count, String noun) {
    return count(count) + " " + noun + (count == 1 ? "" : "s");
  }

  /**
   * Names in a sentence.
   *
   * @param names any number
   * @return e.g. {@code A}, {@code A and B}, {@code A, B and C}
   */
  public static String list(List<String> names) {
    if (names.size() <= 1) {
      return String.join("", names);
    }
    return String.join(", ", names.subList(0, names.size() - 1))
        + " and "
        + names.get(names.size() - 1);
  }

  /**
   * The first of some names as a list, with how many more there are.
   *
   * @param names any number
   * @param most names shown, at least 2
   * @return e.g. {@code Orrin, Linnock and 14 more}
   */
  public static String first(List<String> names, int most) {
    return names.size() <= most
        ? list(names)
        : "%s and %,d more"
            .formatted(String.join(", ", names.subList(0, most - 1)), names.size() - most + 1);
  }

  /**
   * A column name as words.
   *
   * @param column e.g. {@code stock_condition}
   * @return e.g. {@code stock condition}
   */
  public static String column(String column) {
    return column.replace('_', ' ');
  }

  /**
   * What the levels of a column are called.
   *
   * @param column e.g. {@code rootstock}
   * @return e.g. {@code rootstocks}, or {@code levels of budwood kept} where the plural would jar
   */
  public static String levels(String column) {
    return switch (column) {
      case "rootstock", "interstock", "cultivar", "grafter", "season", "site", "method", "block" ->
          column + "s";
      case "pairing", "grafting_day", "bud_stage", "stock_condition" -> column(column) + "s";
      default -> "levels of " + column(column);
    };
  }

  /**
   * A place in a list.
   *
   * @param place 1 or more
   * @return e.g. {@code 1st}, {@code 12th}
   */
  public static String place(int place) {
    int last = place % 100 >= 11 && place % 100 <= 13 ? 0 : place % 10;
    return place + (last == 1 ? "st" : last == 2 ? "nd" : last == 3 ? "rd" : "th");
  }

  /**
   * A number with its unit.
   *
   * @param value any number
   * @param unit in words; may be empty
   * @return e.g. {@code 12 days}, {@code 7.5}
   */
  public static String amount(double value, String unit) {
    String number =
        value == Math.rint(value) ? whole(value) : String.format(Locale.ROOT, "%.1f", value);
    return unit.isEmpty() ? number : number + " " + unit;
  }

  /**
   * A range of deficits, given as negative differences.
   *
   * @param range on -1 to 0
   * @return e.g. {@code 2 to 9 points}
   */
  public static String below(Interval range) {
    return points(new Interval(-range.high(), -range.low(), range.level()));
  }

  /**
   * Text as a sentence: first letter in capitals.
   *
   * @param text any text
   * @return e.g. {@code Rootstock Nerrin was used ...}
   */
  public static String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private static String whole(double value) {
    return String.format(Locale.ROOT, "%d", Math.round(value));
  }

  private static String signed(double value) {
    long whole = Math.round(value);
    return (whole > 0 ? "+" : "") + whole;
  }
}
