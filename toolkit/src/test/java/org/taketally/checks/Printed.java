package org.taketally.checks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as printed.
 *
 * @param value the number
 * @param decimals digits after the point; 0 for a whole number, which is taken as exact
 */
record Printed(double value, int decimals) {

  /** A double's own rounding: nothing is asked to agree more closely than this. */
  private static final double CLOSEST = 1e-12;

  /** "1-10" is a range, not minus ten; text in square brackets is a remark of the copyist. */
  private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])-?\\d+(?:\\.(\\d+))?");

  private static final Pattern REMARK = Pattern.compile("\\[[^]]*]");

  /** All numbers of a text, in order. */
  static List<Printed> numbers(String text) {
    List<Printed> numbers = new ArrayList<>();
    Matcher matcher = NUMBER.matcher(REMARK.matcher(text).replaceAll(""));
    while (matcher.find()) {
      int decimals = matcher.group(1) == null ? 0 : matcher.group(1).length();
      numbers.add(new Printed(Double.parseDouble(matcher.group()), decimals));
    }
    return numbers;
  }

  /** Half a unit of the last printed digit; a whole number must agree exactly. */
  double tolerance() {
    return decimals == 0 ? CLOSEST : Math.max(CLOSEST, 0.5 * Math.pow(10, -decimals) + CLOSEST);
  }

  /** A number of ours with so many decimals, never as minus zero. */
  static String text(double value, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.matches("-0(\\.0*)?") ? text.substring(1) : text;
  }
}
