package org.taketally.records.columns;

import java.util.Set;

/** Words that growers write beside sums and means, in several languages. */
public final class TotalWords {

  private static final Set<String> WORDS =
      Set.of(
          "total",
          "totals",
          "subtotal",
          "grandtotal",
          "sum",
          "sums",
          "mean",
          "average",
          "overall",
          "summe",
          "zwischensumme",
          "gesamtsumme",
          "gesamt",
          "insgesamt",
          "mittel",
          "mittelwert",
          "durchschnitt",
          "suma",
          "totales",
          "promedio",
          "somme",
          "totaux",
          "soustotal",
          "moyenne",
          "somma",
          "totale",
          "totali",
          "soma",
          "totais");

  private static final int LONGEST = 40;

  private TotalWords() {}

  /** Whether a name is one given to sums and means: "Total", "Summe:", "total grafts". */
  public static boolean isTotal(String name) {
    if (name.length() > LONGEST || hasDigit(name)) {
      return false;
    }
    int space = name.indexOf(' ');
    return WORDS.contains(NameLikeness.plain(name))
        || (space > 0
            && WORDS.contains(NameLikeness.plain(name.substring(0, space)))
            && !CommonWords.columns(name.substring(space + 1)).isEmpty());
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
