package org.taketally.records.sources;

/** Takes off white space at both ends, no-break and zero-width spaces included. */
public final class Trim {

  private static final char BYTE_ORDER_MARK = '\uFEFF';
  private static final char ZERO_WIDTH_SPACE = '\u200B';

  /** Up to here no letter beyond the space is one. */
  private static final char LAST_PLAIN = '~';

  private Trim() {}

  public static String trim(String text) {
    int start = 0;
    int end = text.length();
    while (start < end && space(text.charAt(start))) {
      start++;
    }
    while (end > start && space(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(start, end);
  }

  /** White space within a name as single spaces: a no-break or a second one can't be seen. */
  public static String singleSpaced(String text) {
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      boolean odd = letter != ' ' && space(letter);
      if (odd || (letter == ' ' && i > 0 && text.charAt(i - 1) == ' ')) {
        return collapsed(text);
      }
    }
    return text;
  }

  private static String collapsed(String text) {
    StringBuilder name = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      if (!space(letter)) {
        name.append(letter);
      } else if (letter != ZERO_WIDTH_SPACE
          && letter != BYTE_ORDER_MARK
          && !name.isEmpty()
          && name.charAt(name.length() - 1) != ' ') {
        name.append(' ');
      }
    }
    return name.toString();
  }

  /** Whether nothing but white space is there. */
  public static boolean isBlank(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (!space(text.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  private static boolean space(char letter) {
    return letter <= ' '
        || (letter > LAST_PLAIN
            && (Character.isSpaceChar(letter)
                || letter == BYTE_ORDER_MARK
                || letter == ZERO_WIDTH_SPACE));
  }
}
