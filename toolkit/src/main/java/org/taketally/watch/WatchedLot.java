package org.taketally.watch;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Grafts made together and counted on one day of the running season.
 *
 * @param label of the row or batch
 * @param counted day the takes were counted
 * @param grafts grafts assessed, 1 or more
 * @param takes grafts alive, 0 to {@code grafts}
 * @param groups what the lot shares with others: level by column, e.g. {@code grafter} to {@code
 *     GR-2}, in the order causes are to be named
 */
public record WatchedLot(
    String label, LocalDate counted, int grafts, int takes, Map<String, String> groups) {

  public WatchedLot {
    groups = Collections.unmodifiableMap(new LinkedHashMap<>(groups));
    if (grafts < 1 || takes < 0 || takes > grafts) {
      throw new IllegalArgumentException(
          "takes must be 0 to %d (grafts, 1 or more), got %d for %s"
              .formatted(grafts, takes, label));
    }
  }

  /**
   * Grafts that failed.
   *
   * @return 0 to grafts
   */
  public int failures() {
    return grafts - takes;
  }
}
