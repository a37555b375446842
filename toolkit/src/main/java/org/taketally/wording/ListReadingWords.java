package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.plan.order.ListReading;

/** How the headings of an order book or a list of requests were read, in words. */
public final class ListReadingWords {

  private ListReadingWords() {}

  /**
   * What isn't plain from the headings.
   *
   * @param reading of the list
   * @return a paragraph each; none where there is nothing to say
   */
  public static List<String> of(ListReading reading) {
    List<String> words = new ArrayList<>();
    if (!reading.meant().isEmpty()) {
      words.add(
          "Headings were read by what they mean: %s. If one is wrong, name the column as it should be, or say it in a dictionary (--dictionary)."
              .formatted(
                  reading.meant().entrySet().stream()
                      .map(e -> "\"%s\" as %s".formatted(e.getKey(), e.getValue()))
                      .collect(Collectors.joining(", "))));
    }
    if (!reading.notRead().isEmpty()) {
      words.add(
          "%s read: \"%s\"."
              .formatted(
                  reading.notRead().size() == 1 ? "One column wasn't" : "Some columns weren't",
                  String.join("\", \"", reading.notRead())));
    }
    return words;
  }
}
