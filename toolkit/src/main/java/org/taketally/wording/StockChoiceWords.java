package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.plan.order.StockChoice;
import org.taketally.plan.order.StockChoice.Priced;

/** The cheapest stock among equals, in words. */
public final class StockChoiceWords {

  private StockChoiceWords() {}

  /**
   * What to use for lines that take any stock.
   *
   * @param choice as worked out
   * @return a paragraph each
   */
  public static List<String> of(StockChoice choice) {
    List<String> lines = new ArrayList<>();
    if (choice.alike().isEmpty()) {
      lines.add(
          "Any stock: your records don't show yet which stocks make no practical difference, so the"
              + " cheapest can't be named as good as the others.");
    } else if (choice.cheapest().isEmpty()) {
      lines.add(
          "Any stock: %s make no practical difference among themselves in your records; no price was given for any of them."
              .formatted(Words.list(choice.alike())));
    } else {
      lines.add(
          "Any stock: %s at %s a plant is the cheapest of %s, which make no practical difference to take among themselves in your records."
              .formatted(
                  choice.cheapest().get().rootstock(),
                  money(choice.cheapest().get().price()),
                  Words.list(choice.alike())));
    }
    if (!choice.cheaper().isEmpty()) {
      lines.add(
          "Cheaper, but not shown to do as well: %s."
              .formatted(
                  Words.list(
                      choice.cheaper().stream()
                          .map((Priced stock) -> stock.rootstock() + " at " + money(stock.price()))
                          .toList())));
    }
    lines.add("Take is not all: vigour, soil and what is known of later failure weigh as well.");
    return lines;
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, "%,.2f", amount);
  }
}
