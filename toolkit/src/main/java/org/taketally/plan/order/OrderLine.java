package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One line of an order book.
 *
 * @param cultivar what is ordered; never blank
 * @param rootstock the stock wanted; empty if any will do
 * @param trees saleable trees wanted, 1 or more
 * @param due when they are due; empty if not said
 */
public record OrderLine(
    String cultivar, Optional<String> rootstock, int trees, Optional<LocalDate> due) {

  public OrderLine {
    if (cultivar.isBlank()) {
      throw new IllegalArgumentException(
          "a line of an order needs a cultivar; found none beside %d trees".formatted(trees));
    }
    GraftsNeeded.requireTrees(trees);
  }

  /**
   * What the cultivar is called, however it is written: case and blanks make no other cultivar.
   *
   * @return the same for all lines of one cultivar
   */
  public String plainCultivar() {
    return SharedSticks.plain(cultivar);
  }
}
