package org.taketally.records.dictionary;

import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.taketally.records.columns.NameLikeness;

/** Names of months as they are written in six languages, whole or cut short. */
final class MonthNames {

  private static final List<String> MONTHS =
      List.of(
          "january enero janvier januar janeiro gennaio",
          "february febrero fevrier februar fevereiro febbraio",
          "march marzo mars marz maerz marco",
          "april abril avril aprile",
          "may mayo mai maio maggio",
          "june junio juin juni junho giugno",
          "july julio juillet juli julho luglio",
          "august agosto aout",
          "september septiembre septembre setembro settembre",
          "october octubre octobre oktober outubro ottobre",
          "november noviembre novembre novembro",
          "december diciembre decembre dezember dezembro dicembre");

  private static final int SHORTEST = 3;
  private static final Pattern WORD = Pattern.compile("(\\p{L}{3,})\\.?");
  private static final Pattern OF = Pattern.compile("(?iu)\\s+(de|del|di)\\s+");

  private MonthNames() {}

  /** A text with the name of a month as its number, and without "de" between the parts. */
  static String inNumbers(String text) {
    return WORD.matcher(OF.matcher(text.strip()).replaceAll(" "))
        .replaceAll(
            word ->
                number(word.group(1)).stream()
                    .mapToObj(Integer::toString)
                    .findFirst()
                    .orElse(Matcher.quoteReplacement(word.group())));
  }

  /** The month a word names or begins, if it is one only. */
  private static OptionalInt number(String word) {
    String plain = NameLikeness.plain(word);
    if (plain.length() < SHORTEST) {
      return OptionalInt.empty();
    }
    List<Integer> fit =
        IntStream.rangeClosed(1, MONTHS.size())
            .filter(month -> (" " + MONTHS.get(month - 1)).contains(" " + plain))
            .boxed()
            .collect(Collectors.toList());
    return fit.size() == 1 ? OptionalInt.of(fit.get(0)) : OptionalInt.empty();
  }
}
