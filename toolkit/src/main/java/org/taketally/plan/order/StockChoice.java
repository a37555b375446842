package org.taketally.plan.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.answers.verdict.FactorVerdict;

/**
 * The cheapest stock among those shown to make no practical difference.
 *
 * @param cheapest empty if none of the stocks shown alike has a price
 * @param alike stocks shown to make no practical difference among themselves, cheapest first, then
 *     those without a price; empty if none were shown
 * @param cheaper stocks with a lower price that were not shown to be as good, cheapest first
 */
public record StockChoice(Optional<Priced> cheapest, List<String> alike, List<Priced> cheaper) {

  public StockChoice {
    alike = List.copyOf(alike);
    cheaper = List.copyOf(cheaper);
  }

  /**
   * A stock and its price.
   *
   * @param rootstock name
   * @param price of one plant, in the user's money, above 0
   */
  public record Priced(String rootstock, double price) {}

  /**
   * Chooses.
   *
   * @param verdict on rootstocks, from past records
   * @param prices of one plant of each, above 0
   * @return the choice
   * @throws IllegalArgumentException if a price isn't above 0, or its stock isn't in the records
   */
  public static StockChoice of(FactorVerdict verdict, Map<String, Double> prices) {
    List<String> known = verdict.levels().stream().map(FactorVerdict.LevelTake::level).toList();
    prices.forEach(
        (stock, price) -> {
          if (!known.contains(stock)) {
            throw new IllegalArgumentException(
                "there is a price for rootstock \"%s\", of which there are no records; there are %s"
                    .formatted(stock, String.join(", ", known)));
          }
          if (!(price > 0)) {
            throw new IllegalArgumentException(
                "the price of a stock must be above 0, e.g. 2.50, got %s for %s"
                    .formatted(price, stock));
          }
        });
    List<String> alike = new ArrayList<>(verdict.equivalentLevels());
    alike.sort(
        Comparator.comparingDouble(stock -> prices.getOrDefault(stock, Double.POSITIVE_INFINITY)));
    Optional<Priced> cheapest =
        alike.stream()
            .filter(prices::containsKey)
            .findFirst()
            .map(stock -> new Priced(stock, prices.get(stock)));
    double most = cheapest.map(Priced::price).orElse(Double.POSITIVE_INFINITY);
    List<Priced> cheaper =
        prices.entrySet().stream()
            .filter(e -> !alike.contains(e.getKey()) && e.getValue() < most)
            .map(e -> new Priced(e.getKey(), e.getValue()))
            .sorted(Comparator.comparingDouble(Priced::price))
            .toList();
    return new StockChoice(cheapest, alike, cheaper);
  }
}
