package org.taketally.wording.language;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.stream.Stream;

/** A language pages for members are written in. Another one takes a line here and its texts. */
public enum Language {
  /** As all the rest of the program. */
  ENGLISH(Locale.ENGLISH, ",", ".", 4),
  /** Thousands parted from five digits on, by a narrow space; decimals after a comma. */
  SPANISH(new Locale("es"), "\u202f", ",", 5);

  /** Beginnings before which {@code y} is written {@code e}, and {@code o} {@code u}. */
  private static final String SOUNDS_AS_I = "(?iu)h?[ií](?![aeoáéó]).*";

  private static final String SOUNDS_AS_O = "(?iu)h?[oó].*";

  private final Locale locale;
  private final String groupMark;
  private final String decimalMark;
  private final int groupedFrom;

  Language(Locale locale, String groupMark, String decimalMark, int groupedFrom) {
    this.locale = locale;
    this.groupMark = groupMark;
    this.decimalMark = decimalMark;
    this.groupedFrom = groupedFrom;
  }

  /**
   * The code of the language.
   *
   * @return two small letters of ISO 639-1
   */
  public String code() {
    return locale.getLanguage();
  }

  Locale locale() {
    return locale;
  }

  /** The key of the text that joins a last name, whose sound may change it. */
  String joint(String key, String last) {
    if (this == SPANISH && key.equals("and") && last.matches(SOUNDS_AS_I)) {
      return "and.i";
    }
    return this == SPANISH && key.equals("or") && last.matches(SOUNDS_AS_O) ? "or.o" : key;
  }

  /**
   * A language by its code.
   *
   * @param code two letters of ISO 639-1, e.g. {@code es}
   * @return the language
   * @throws IllegalArgumentException if there are no texts in it
   */
  public static Language of(String code) {
    for (Language language : values()) {
      if (language.code().equalsIgnoreCase(code)) {
        return language;
      }
    }
    throw new IllegalArgumentException(
        "no texts in language \"%s\"; there are %s"
            .formatted(code, Stream.of(values()).map(Language::code).toList()));
  }

  /** A whole number as this language writes it. */
  String whole(long number) {
    String digits = Long.toString(Math.abs(number));
    if (digits.length() < groupedFrom) {
      return Long.toString(number);
    }
    String grouped = digits.replaceAll("(?<=\\d)(?=(\\d{3})+$)", groupMark);
    return number < 0 ? "-" + grouped : grouped;
  }

  /** A number with one decimal as this language writes it. */
  String oneDecimal(double number) {
    return String.format(Locale.ROOT, "%.1f", number).replace(".", decimalMark);
  }

  /** A number with up to two decimals as this language writes it. */
  String decimals(double number) {
    BigDecimal rounded =
        BigDecimal.valueOf(number).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString().replace(".", decimalMark);
  }
}
