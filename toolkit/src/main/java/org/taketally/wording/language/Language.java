package org.taketally.wording.language;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** A language pages for members are written in. Another one takes a line here and its texts. */
public enum Language {
  /** As all the rest of the program. */
  ENGLISH(Locale.ENGLISH, ",", ".", 4);

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
