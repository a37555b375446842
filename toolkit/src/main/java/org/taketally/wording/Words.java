package org.taketally.wording;

import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.terms.Interval;
import org.taketally.terms.Plural;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** Numbers in plain English, the same way everywhere; other languages: {@link Phrases}. */
public final class Words {

  private static final String BUDWOOD_KEPT = "budwood_kept";

  private static final double PER_CENT = 100;

  private static final Phrases ENGLISH = Phrases.in(Language.ENGLISH);

  private Words() {}

  /**
   * A share as a whole percentage, but never rounded to certainty.
   *
   * @param share 0 to 1
   * @return e.g. {@code 63 %}, {@code under 1 %}, {@code over 99 %}
   */
  public static String percent(double share) {
    return ENGLISH.percent(share);
  }

  /**
   * A chance worked out by simulation, which is never certain.
   *
   * @param chance 0 to 1
   * @return e.g. {@code 97 %}, {@code under 1 %}, {@code over 99 %}
   */
  public static String chance(double chance) {
    return ENGLISH.chance(chance);
  }

  /**
   * A chance that isn't known exactly.
   *
   * @param chance 0 to 1
   * @return e.g. {@code about 8 %}, but {@code under 1 %} and {@code over 99 %}
   */
  public static String aboutChance(double chance) {
    String words = chance(chance);
    return Character.isDigit(words.charAt(0)) ? "about " + words : words;
  }

  /**
   * A share somebody stated, as stated, to two decimals at most.
   *
   * @param share 0 to 1
   * @return e.g. {@code 99.5 %}
   */
  public static String statedPercent(double share) {
    return ENGLISH.number(PER_CENT * share) + " %";
  }

  /**
   * A difference somebody stated, as stated, to two decimals at most, sign left off.
   *
   * @param difference -1 to 1
   * @return e.g. {@code 2.5 points}, {@code 1 point}
   */
  public static String statedPoints(double difference) {
    String size = ENGLISH.number(PER_CENT * Math.abs(difference));
    return size + (size.equals("1") ? " point" : " points");
  }

  /**
   * A range of shares.
   *
   * @param range on 0 to 1
   * @return e.g. {@code 63 to 90 %}
   */
  public static String percents(Interval range) {
    return ENGLISH.percents(range);
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
    return ENGLISH.points(difference);
  }

  /**
   * An estimated difference of takes in points, sign left off.
   *
   * @param difference -1 to 1
   * @return e.g. {@code about 4 points}, {@code under 1 point}
   */
  public static String aboutPoints(double difference) {
    return ENGLISH.aboutPoints(difference);
  }

  /**
   * A range of differences in points, with signs when it spans zero.
   *
   * @param range on -1 to 1
   * @return e.g. {@code 2 to 9 points} or {@code -3 to +5 points}
   */
  public static String points(Interval range) {
    return ENGLISH.points(range);
  }

  /**
   * A count with thousands parted by commas.
   *
   * @param count any whole number
   * @return e.g. {@code 4,782}
   */
  public static String count(long count) {
    return ENGLISH.count(count);
  }

  /**
   * A count with its noun.
   *
   * @param count any whole number
   * @param noun in the singular, plural by adding s
   * @return e.g. {@code 1 graft}, {@code 4,782 grafts}
   */
  public static String count(long count, String noun) {
    return Plural.of(count, noun);
  }

  /**
   * Names in a sentence.
   *
   * @param names any number
   * @return e.g. {@code A}, {@code A and B}, {@code A, B and C}
   */
  public static String list(List<String> names) {
    return ENGLISH.list(names);
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
    return ENGLISH.column(column);
  }

  /**
   * One level with its column.
   *
   * @param column e.g. {@code rootstock}
   * @param level e.g. {@code Pellin}
   * @return e.g. {@code rootstock Pellin}, {@code budwood kept moist}
   */
  public static String level(String column, String level) {
    return beforeLevel(column) + " " + level;
  }

  /**
   * A column's name where one of its levels follows.
   *
   * @param column e.g. {@code rootstock}
   * @return e.g. {@code rootstock}, {@code budwood kept}
   */
  static String beforeLevel(String column) {
    return column.equals(BUDWOOD_KEPT) ? "budwood kept" : column(column);
  }

  /**
   * What the levels of a column are called.
   *
   * @param column e.g. {@code rootstock}
   * @return e.g. {@code rootstocks}, or {@code levels of tool cleaning} where the plural would jar
   */
  public static String levels(String column) {
    return switch (column) {
      case "rootstock", "interstock", "cultivar", "grafter", "season", "site", "method", "block" ->
          column + "s";
      case "pairing", "grafting_day", "bud_stage", "stock_condition" -> column(column) + "s";
      case BUDWOOD_KEPT -> "ways budwood was kept";
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
    return ENGLISH.amount(value, unit);
  }

  /**
   * A range of deficits, given as negative differences.
   *
   * @param range on -1 to 0
   * @return e.g. {@code 2 to 9 points}
   */
  public static String below(Interval range) {
    return points(new Interval(-range.high(), -range.low(), range.coverage()));
  }

  /**
   * Text as a sentence: first letter in capitals.
   *
   * @param text any text
   * @return e.g. {@code Rootstock Nerrin was used ...}
   */
  public static String sentence(String text) {
    return ENGLISH.sentence(text);
  }
}
