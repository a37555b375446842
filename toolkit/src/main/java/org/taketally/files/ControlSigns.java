package org.taketally.files;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Signs that show nothing and steer what shows text: control signs and those that turn the
 * direction of writing. Codes such as {@code \}{@code u001B} stand in their place.
 */
public final class ControlSigns {

  private static final Pattern CODE = Pattern.compile("\\\\u([0-9A-F]{4})");
  private static final int HEXADECIMAL = 16;

  private ControlSigns() {}

  /**
   * Text that steers nothing.
   *
   * @param text any
   * @return the same with codes in place of control signs; line feeds and tabs stay
   */
  public static String neutral(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char sign = text.charAt(i);
      shown.append(steers(sign) ? code(sign) : String.valueOf(sign));
    }
    return shown.toString();
  }

  /**
   * Text that steers nothing and from which {@link #typed} gets the whole back.
   *
   * @param text any
   * @return as {@link #neutral}; what looked like a code already has one for its backslash
   */
  public static String reversible(String text) {
    return neutral(
        CODE.matcher(text)
            .replaceAll(found -> Matcher.quoteReplacement(code('\\') + "u" + found.group(1))));
  }

  /**
   * The reverse of {@link #reversible}.
   *
   * @param text what was written
   * @return what was to be shown
   */
  public static String typed(String text) {
    return CODE.matcher(text)
        .replaceAll(
            found ->
                Matcher.quoteReplacement(
                    String.valueOf((char) Integer.parseInt(found.group(1), HEXADECIMAL))));
  }

  private static String code(char sign) {
    return String.format(Locale.ROOT, "\\u%04X", (int) sign);
  }

  private static boolean steers(char sign) {
    return switch (sign) {
      case '\n', '\t' -> false;
      case '\u061C', '\u200E', '\u200F', '\u2028', '\u2029', '\uFEFF' -> true;
      default -> Character.isISOControl(sign) || turns(sign);
    };
  }

  /**
   * Whether a sign turns the direction of all that follows it.
   *
   * @param sign a code point
   * @return whether it begins or ends an embedding, an override or an isolate
   */
  public static boolean turns(int sign) {
    return (sign >= '\u202A' && sign <= '\u202E') || (sign >= '\u2066' && sign <= '\u2069');
  }
}
