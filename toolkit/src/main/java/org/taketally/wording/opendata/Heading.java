package org.taketally.wording.opendata;

import java.util.List;

/**
 * A column of a table that goes out.
 *
 * @param name its heading
 * @param meaning what stands in it
 */
public record Heading(String name, String meaning) {

  /** Headings and meanings in turn. */
  static List<Heading> list(String... namesAndMeanings) {
    Heading[] all = new Heading[namesAndMeanings.length / 2];
    for (int i = 0; i < all.length; i++) {
      all[i] = new Heading(namesAndMeanings[2 * i], namesAndMeanings[2 * i + 1]);
    }
    return List.of(all);
  }
}
