package org.taketally.watch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.watch.TakeWatch.CountedLot;
import org.taketally.watch.WatchedSeason.Seen;

/** Adds up failures seen and expected by each level of each column. */
final class SeenFailures {

  private SeenFailures() {}

  /** Column by column, within it the most failures beyond those expected first. */
  static List<Seen> of(List<CountedLot> lots) {
    Map<String, Map<String, Seen>> byColumn = new LinkedHashMap<>();
    for (CountedLot counted : lots) {
      WatchedLot lot = counted.lot();
      double expected = lot.grafts() * (1 - counted.expected().mean());
      lot.groups()
          .forEach(
              (column, level) ->
                  byColumn
                      .computeIfAbsent(column, name -> new LinkedHashMap<>())
                      .merge(
                          level,
                          new Seen(column, level, lot.grafts(), lot.failures(), expected),
                          SeenFailures::sum));
    }
    List<Seen> all = new ArrayList<>();
    byColumn
        .values()
        .forEach(
            levels ->
                levels.values().stream()
                    .sorted(Comparator.comparingDouble(Seen::excess).reversed())
                    .forEach(all::add));
    return all;
  }

  private static Seen sum(Seen first, Seen second) {
    return new Seen(
        first.column(),
        first.level(),
        first.grafts() + second.grafts(),
        first.failures() + second.failures(),
        first.expectedFailures() + second.expectedFailures());
  }
}
