package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.taketally.plan.order.GraftOrder.Ordered;
import org.taketally.plan.order.GraftOrder.TreeRange;

/**
 * What the grafts and sticks there are give for a line. Lines of a cultivar that are grafted in one
 * season share its sticks, those due first before others: each takes what it needs, the last what
 * is left. Wood doesn't keep from season to season: what is said of lines of a later season is
 * theirs.
 *
 * @param line of the book
 * @param season which season of the order it belongs to, from 0
 * @param sticks that are used for it; empty if nobody said how many there are
 * @param grafts that can be made for it, 0 or more
 * @param trees to expect of them
 * @param chance that they are enough, 0 to 1
 */
public record OnHand(
    OrderLine line, int season, OptionalInt sticks, int grafts, TreeRange trees, double chance) {

  /**
   * What there is gives.
   *
   * @param entries of the book
   * @param ordered the same lines with what is known of their grafts
   * @param order what they need
   * @return one a line, in its order; empty for a line of which the book doesn't say what there is
   */
  public static List<Optional<OnHand>> byLine(
      List<OrderBook.Entry> entries, List<Ordered> ordered, GraftOrder order) {
    List<Optional<OnHand>> all =
        new ArrayList<>(Collections.nCopies(entries.size(), Optional.empty()));
    List<List<Integer>> seasons =
        DueSeasons.of(entries.stream().map(OrderBook.Entry::line).toList());
    for (int season = 0; season < seasons.size(); season++) {
      Known known = new Known(entries, ordered, order, season);
      known.share(seasons.get(season)).forEach((i, there) -> all.set(i, Optional.of(there)));
    }
    return all;
  }

  /** What is known of the lines of a season. */
  private record Known(
      List<OrderBook.Entry> entries, List<Ordered> ordered, GraftOrder order, int season) {

    /** Shares the sticks of the season among its lines. */
    private Map<Integer, OnHand> share(List<Integer> lines) {
      Map<Integer, OnHand> all = new HashMap<>();
      SharedSticks left = new SharedSticks();
      lines.stream()
          .map(entries::get)
          .forEach(e -> e.sticks().ifPresent(n -> left.there(e.line().cultivar(), n)));
      List<Integer> byDue =
          lines.stream()
              .sorted(Comparator.comparing(i -> entries.get(i).line().due().orElse(LocalDate.MAX)))
              .toList();
      WoodUse wood = order.terms().wood();
      for (int place = 0; place < byDue.size(); place++) {
        int i = byDue.get(place);
        OrderBook.Entry entry = entries.get(i);
        boolean last =
            byDue.subList(place + 1, byDue.size()).stream()
                .map(later -> entries.get(later).line().plainCultivar())
                .noneMatch(entry.line().plainCultivar()::equals);
        OptionalInt needed = last ? OptionalInt.empty() : order.lines().get(i).sticks();
        OptionalInt sticks = sticks(entry, left.left(entry.line().cultivar()), needed, wood);
        sticks.ifPresent(used -> left.use(entry.line().cultivar(), used));
        IntStream.concat(sticks.stream().map(wood::graftsFrom), entry.grafts().stream())
            .min()
            .ifPresent(grafts -> all.put(i, of(ordered.get(i), season, sticks, grafts)));
      }
      return all;
    }
  }

  /** The least of what is there, what the line needs and what its grafts use. */
  private static OptionalInt sticks(
      OrderBook.Entry entry, OptionalInt there, OptionalInt needed, WoodUse wood) {
    IntStream most = IntStream.concat(needed.stream(), entry.grafts().stream().map(wood::sticks));
    return there.isEmpty() ? there : IntStream.concat(there.stream(), most).min();
  }

  private static OnHand of(Ordered ordered, int season, OptionalInt sticks, int grafts) {
    return new OnHand(
        ordered.line(),
        season,
        sticks,
        grafts,
        GraftOrder.trees(ordered.takes(), grafts),
        ordered.takes().probabilityOfAtLeast(ordered.line().trees(), grafts));
  }
}
