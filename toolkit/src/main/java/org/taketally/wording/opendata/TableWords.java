package org.taketally.wording.opendata;

import java.util.List;

/**
 * What a file that goes out holds.
 *
 * @param title in a few words
 * @param headings of a table whose columns are the same in every package, in their order; else none
 */
public record TableWords(String title, List<Heading> headings) {

  public TableWords {
    headings = List.copyOf(headings);
  }

  /** A title, and headings and their meanings in turn. */
  static TableWords of(String title, String... namesAndMeanings) {
    Heading[] all = new Heading[namesAndMeanings.length / 2];
    for (int i = 0; i < all.length; i++) {
      all[i] = new Heading(namesAndMeanings[2 * i], namesAndMeanings[2 * i + 1]);
    }
    return new TableWords(title, List.of(all));
  }
}
