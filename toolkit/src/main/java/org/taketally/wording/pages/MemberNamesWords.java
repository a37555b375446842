package org.taketally.wording.pages;

import java.util.ArrayList;
import java.util.List;
import org.taketally.wording.Words;

/** How names of grafters were counted as members; for whoever publishes, not for the page. */
public final class MemberNamesWords {

  private MemberNamesWords() {}

  /**
   * What was supposed of names.
   *
   * @param together names counted as one member, by member
   * @param nobody names counted as no member
   * @return sentences; none if each name stands for a member of its own
   */
  public static List<String> of(List<List<String>> together, List<String> nobody) {
    List<String> sentences = new ArrayList<>();
    for (List<String> names : together) {
      sentences.add(
          "Counted as one member, because they may be one person: "
              + quoted(names)
              + "; if they are several people, write their family names too");
    }
    if (!nobody.isEmpty()) {
      sentences.add(
          "Counted as no member, because nobody, or more than one person, is meant: "
              + quoted(nobody)
              + "; write a name, or a letter, for each person");
    }
    return sentences;
  }

  private static String quoted(List<String> names) {
    return Words.list(names.stream().map(name -> '"' + name + '"').toList());
  }
}
