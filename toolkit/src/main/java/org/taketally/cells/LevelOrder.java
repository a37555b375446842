package org.taketally.cells;

import java.math.BigInteger;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.taketally.records.columns.RecordColumn;

/**
 * The order of levels: that of the record column where it gives one, whatever the case and
 * punctuation, then natural.
 */
final class LevelOrder {

  private static final Pattern NOT_LETTERS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern PIECE = Pattern.compile("[0-9]+|[^0-9]+");

  private LevelOrder() {}

  /** Order of the levels of a column. */
  static Comparator<String> of(String column) {
    List<String> allowed = RecordColumn.named(column).map(RecordColumn::allowed).orElse(List.of());
    return Comparator.<String>comparingInt(level -> place(allowed, level))
        .thenComparing(LevelOrder::natural);
  }

  private static int place(List<String> allowed, String level) {
    if (allowed.isEmpty()) {
      return 0;
    }
    String letters = letters(level);
    for (int place = 0; place < allowed.size(); place++) {
      if (letters(allowed.get(place)).equals(letters)) {
        return place;
      }
    }
    return allowed.size();
  }

  private static String letters(String name) {
    return NOT_LETTERS.matcher(name).replaceAll("").toLowerCase(Locale.ROOT);
  }

  /** Alphabetical without regard to case, runs of digits by their value: row-2 before row-10. */
  static int natural(String one, String other) {
    Matcher left = PIECE.matcher(one);
    Matcher right = PIECE.matcher(other);
    while (true) {
      boolean more = left.find();
      if (!more || !right.find()) {
        return !more && !right.find() ? one.compareTo(other) : (more ? 1 : -1);
      }
      int order = piece(left.group(), right.group());
      if (order != 0) {
        return order;
      }
    }
  }

  private static int piece(String left, String right) {
    if (Character.isDigit(left.charAt(0)) && Character.isDigit(right.charAt(0))) {
      return new BigInteger(left).compareTo(new BigInteger(right));
    }
    return left.compareToIgnoreCase(right);
  }
}
