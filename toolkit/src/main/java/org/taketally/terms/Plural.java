package org.taketally.terms;

import java.util.Locale;

/** A count with its noun, in English: the one place that knows a plural from a singular. */
public final class Plural {

  private Plural() {}

  /**
   * A count with its noun.
   *
   * @param count any whole number
   * @param noun in the singular, plural by adding s
   * @return e.g. {@code 1 graft}, {@code 4,782 grafts}
   */
  public static String of(long count, String noun) {
    return String.format(Locale.ROOT, "%,d %s%s", count, noun, count == 1 ? "" : "s");
  }
}
