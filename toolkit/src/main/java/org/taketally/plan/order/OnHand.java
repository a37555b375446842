package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.taketally.plan.order.GraftOrder.Ordered;
import org.taketally.plan.order.GraftOrder.TreeRange;

/**
 * What the grafts and sticks there are give for a line. Lines of a cultivar share its sticks, those
 * due first before others: each takes what it needs, the last what is left.
 *
 * @param line of the book
 * @param sticks that are used for it; empty if nobody said how many there are
 * @param grafts that can be made for it, 0 or more
 * @param trees to expect of them
 * @param chance that they are enough, 0 to 1
 */
public record OnHand(
    OrderLine line, OptionalInt sticks, int grafts, TreeRange trees, double chance) {

  /**
   * What there is gives.
   *
   * @param entries of the book
   * @param ordered the same lines with what is known of their grafts
   * @param order what they need
   * @return one a line of which the book says what there is, in its order
   */
  public static List<OnHand> of(
      List<OrderBook.Entry> entries, List<Ordered> ordered, GraftOrder order) {
    SharedSticks left = new SharedSticks();
    entries.forEach(e -> e.sticks().ifPresent(n -> left.there(e.line().cultivar(), n)));
    OnHand[] all = new OnHand[entries.size()];
    List<Integer> byDue =
        IntStream.range(0, all.length)
            .boxed()
            .sorted(Comparator.comparing(i -> entries.get(i).line().due().orElse(LocalDate.MAX)))
            .toList();
    WoodUse wood = order.terms().wood();
    for (int place = 0; place < all.length; place++) {
      int i = byDue.get(place);
      OrderBook.Entry entry = entries.get(i);
      boolean last =
          byDue.subList(place + 1, all.length).stream()
              .map(later -> entries.get(later).line().plainCultivar())
              .noneMatch(entry.line().plainCultivar()::equals);
      OptionalInt needed = last ? OptionalInt.empty() : order.lines().get(i).sticks();
      OptionalInt sticks = sticks(entry, left.left(entry.line().cultivar()), needed, wood);
      sticks.ifPresent(used -> left.use(entry.line().cultivar(), used));
      all[i] =
          IntStream.concat(sticks.stream().map(wood::graftsFrom), entry.grafts().stream())
              .min()
              .stream()
              .mapToObj(grafts -> of(ordered.get(i), sticks, grafts))
              .findFirst()
              .orElse(null);
    }
    return Arrays.stream(all).filter(Objects::nonNull).toList();
  }

  /** The least of what is there, what the line needs and what its grafts use. */
  private static OptionalInt sticks(
      OrderBook.Entry entry, OptionalInt there, OptionalInt needed, WoodUse wood) {
    IntStream most = IntStream.concat(needed.stream(), entry.grafts().stream().map(wood::sticks));
    return there.isEmpty() ? there : IntStream.concat(there.stream(), most).min();
  }

  private static OnHand of(Ordered ordered, OptionalInt sticks, int grafts) {
    return new OnHand(
        ordered.line(),
        sticks,
        grafts,
        GraftOrder.trees(ordered.takes(), grafts),
        ordered.takes().probabilityOfAtLeast(ordered.line().trees(), grafts));
  }
}
