package org.taketally.records.columns;

import java.util.regex.Pattern;

/** Sentences that people write below or between the rows of a sheet. */
public final class Remarks {

  private static final Pattern MANY_WORDS = Pattern.compile("\\S+(?:\\s+\\S+){3,}");

  private Remarks() {}

  /**
   * Whether a text that stands alone in its row reads as a remark and not as a name or label.
   *
   * @param text trimmed
   * @return true with a colon between words, or with four words or more
   */
  public static boolean isRemark(String text) {
    int colon = text.indexOf(':');
    boolean said =
        colon > 0
            && Character.isLetter(text.charAt(0))
            && (colon + 1 == text.length() || Character.isWhitespace(text.charAt(colon + 1)));
    return said || MANY_WORDS.matcher(text).matches();
  }
}
