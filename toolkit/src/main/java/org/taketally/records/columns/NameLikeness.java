package org.taketally.records.columns;

import java.text.Normalizer;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;

/** How alike two names are, and what a name comes to without case, accents and punctuation. */
public final class NameLikeness {

  /**
   * Similarity (Jaro-Winkler, 0 to 1) from which two names may be one: common practice, no source.
   */
  public static final double NEARLY_ALIKE = 0.92;

  private static final double WORTH_A_GUESS = 0.8;
  private static final int LONGEST = 200;
  private static final JaroWinklerSimilarity SIMILARITY = new JaroWinklerSimilarity();
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern NOT_ALPHANUMERIC = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern NOT_DIGITS = Pattern.compile("\\P{N}+");

  private NameLikeness() {}

  /** Letters and digits only, lower case, without accents; {@code &} is "and". */
  public static String plain(String name) {
    String letters = Normalizer.normalize(name.replace("&", " and "), Normalizer.Form.NFD);
    letters = MARKS.matcher(letters).replaceAll("");
    return NOT_ALPHANUMERIC.matcher(letters).replaceAll("").toLowerCase(Locale.ROOT);
  }

  /** The digits of a name, runs kept apart: names that differ here are meant to differ. */
  public static String digits(String name) {
    return NOT_DIGITS.matcher(name).replaceAll(" ").strip();
  }

  /** Whether a name with a dot at its end is cut short from another: "Corv." of "Corvane". */
  public static boolean shortFor(String cut, String name) {
    String plain = plain(cut);
    return cut.strip().endsWith(".")
        && plain.length() >= 2
        && plain(name).length() > plain.length()
        && plain(name).startsWith(plain);
  }

  /** Whether two names may be one: spelt two ways, nearly alike, or one cut short. */
  public static boolean mayBeOne(String one, String other) {
    String plain = plain(one);
    String second = plain(other);
    String digits = digits(one);
    boolean alike =
        Math.min(plain.length(), second.length()) > digits.length() + 2
            && similarity(plain, second) >= NEARLY_ALIKE;
    return digits.equals(digits(other))
        && (plain.equals(second) || alike || shortFor(one, other) || shortFor(other, one));
  }

  /**
   * Similarity of two names already made plain, 0 to 1; of longer ones than anybody gives, by how
   * they begin, since the time taken grows with the square of the length.
   */
  public static double similarity(String plain, String other) {
    return SIMILARITY.apply(beginning(plain), beginning(other));
  }

  private static String beginning(String plain) {
    return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST);
  }

  /** The name most like a mistyped one, if any is worth a guess. */
  public static Optional<String> nearest(String mistyped, List<String> names) {
    String plain = plain(mistyped);
    return names.stream()
        .filter(name -> similarity(plain, plain(name)) >= WORTH_A_GUESS)
        .max(Comparator.comparingDouble(name -> similarity(plain, plain(name))));
  }
}
