package org.taketally.records.columns;

import java.util.Set;

/** Words that growers write beside sums and means, in several languages. */
public final class TotalWords {

  private static final Set<String> SUMS =
      Set.of(
          "total",
          "totals",
          "subtotal",
          "grandtotal",
          "sum",
          "sums",
          "summe",
          "zwischensumme",
          "gesamtsumme",
          "gesamt",
          "insgesamt",
          "zusammen",
          "suma",
          "sumatotal",
          "soma",
          "totales",
          "somme",
          "totaux",
          "soustotal",
          "somma",
          "totale",
          "totali",
          "totais");

  private static final Set<String> MEANS =
      Set.of("mean", "average", "overall", "mittelwert", "durchschnitt", "promedio", "moyenne");

  private static final int LONGEST = 40;

  private TotalWords() {}

  /** Whether a name is one given to rows of sums and means: "Total", "total grafts", "Mean". */
  public static boolean isTotal(String name) {
    return isSum(name) || (!hasDigit(name) && MEANS.contains(NameLikeness.plain(name)));
  }

  /** Whether a text stands for a sum wherever it stands; a stock may be "average". */
  public static boolean isSum(String text) {
    if (text.length() > LONGEST || hasDigit(text)) {
      return false;
    }
    int space = text.indexOf(' ');
    return SUMS.contains(NameLikeness.plain(text))
        || (space > 0
            && SUMS.contains(NameLikeness.plain(text.substring(0, space)))
            && !CommonWords.columns(text.substring(space + 1)).isEmpty());
  }

  /** No word for totals has one, and most labels do: ten million needn't be taken apart. */
  private static boolean hasDigit(String name) {
    for (int i = 0; i < name.length(); i++) {
      if (name.charAt(i) >= '0' && name.charAt(i) <= '9') {
        return true;
      }
    }
    return false;
  }
}
