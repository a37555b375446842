package org.taketally.plan.order;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.taketally.model.TakeFit;
import org.taketally.plan.order.GraftOrder.TreeRange;

/**
 * What a few grafts of each cultivar usually give in a season to come, by the hands of the records,
 * and how many grafts are enough for a few trees.
 *
 * @param grafts a lot of each cultivar
 * @param trees wanted of each
 * @param cultivars what is usual, by cultivar
 */
public record UsualTakes(int grafts, int trees, Map<String, Usual> cultivars) {

  /** Grafts a member makes of a cultivar, and trees wanted of it. Common practice, no source. */
  private static final int A_FEW = 10;

  /** How often the grafts must be enough. Common practice, no source. */
  private static final double ASSURANCE = 0.9;

  /**
   * Seasons drawn: with so many a seed moves grafts for trees of the hardest cultivars of the demo
   * by 1 in 10 at most, as seen with six seeds; with 200 by 1 in 4.
   */
  private static final int SEASONS = 1000;

  /** Grafts of a day, and how far seasons differ where only one is known; as orders suppose. */
  private static final ForecastOrder.Luck LUCK = new ForecastOrder.Luck(A_FEW, 0.06, 0);

  public UsualTakes {
    cultivars = Map.copyOf(cultivars);
  }

  /**
   * What is usual for a cultivar.
   *
   * @param low fewest takes in 8 of 10 lots
   * @param high most takes in 8 of 10 lots
   * @param graftsForTrees grafts that are enough in 9 of 10 seasons; empty if over a million
   */
  public record Usual(int low, int high, OptionalInt graftsForTrees) {}

  /**
   * What is usual by a fit.
   *
   * @param fit of the records
   * @param cultivars asked about
   * @param seed the same seed gives the same seasons
   * @return those of the cultivars whose take the fit lets vary
   */
  public static UsualTakes of(TakeFit fit, List<String> cultivars, long seed) {
    ForecastOrder order = new ForecastOrder(fit, SEASONS, seed, LUCK);
    List<OrderBook.Entry> entries =
        cultivars.stream()
            .map(name -> new OrderLine(name, Optional.empty(), A_FEW, Optional.empty()))
            .filter(line -> order.unknown(line).isEmpty())
            .map(UsualTakes::entry)
            .toList();
    List<SeasonTakes> takes =
        order.takes(
            entries,
            (take, seasons) -> {
              throw new IllegalStateException("no take is stated here");
            });
    Map<String, Usual> usual = new LinkedHashMap<>();
    for (int i = 0; i < takes.size(); i++) {
      usual.put(entries.get(i).line().cultivar(), usual(takes.get(i)));
    }
    return new UsualTakes(A_FEW, A_FEW, usual);
  }

  private static OrderBook.Entry entry(OrderLine line) {
    return new OrderBook.Entry(
        line, OptionalDouble.empty(), OptionalInt.empty(), OptionalInt.empty());
  }

  private static Usual usual(SeasonTakes takes) {
    TreeRange range = GraftOrder.trees(takes, A_FEW);
    return new Usual(range.low(), range.high(), GraftsNeeded.fewest(takes, A_FEW, ASSURANCE));
  }
}
