package org.taketally.records.columns;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Marks and words that mean the same as in the row above, where a name belongs. */
public final class DittoMarks {

  /** Signs alone: {@code "}, {@code ''}, {@code -"-}, {@code 〃}. */
  private static final Pattern MARKS =
      Pattern.compile("[-–—\\s]*([\"“”„‟″〃]|''|’’|‘‘|´´|``|,,)+[-–—\\s]*");

  private static final Set<String> WORDS =
      Set.of(
          "do",
          "do.",
          "ditto",
          "dito",
          "dto.",
          "idem",
          "ídem",
          "id.",
          "as above",
          "see above",
          "same as above",
          "wie oben",
          "siehe oben",
          "s. o.",
          "s.o.");

  private static final int LONGEST = 13;

  private DittoMarks() {}

  /** Whether a text stands for what stands above it. */
  public static boolean isDitto(String text) {
    return !text.isEmpty()
        && text.length() <= LONGEST
        && !Character.isDigit(
            text.charAt(0)) // most fields of a sheet: no pattern need look at them
        && (WORDS.contains(text.toLowerCase(Locale.ROOT)) || MARKS.matcher(text).matches());
  }
}
