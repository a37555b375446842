package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Seasons of grafting that the lines of a book belong to, by the days they are due: what is due
 * much later than the first is grafted in a later season.
 */
final class DueSeasons {

  /**
   * Lines due so many months or more after the first of a season belong to the next: less than a
   * year, as days due move. Common practice, no source.
   */
  static final int MONTHS = 9;

  private DueSeasons() {}

  /**
   * The seasons of some lines.
   *
   * @param lines of a book; one without a day due belongs to the first season
   * @return places of the lines in the book, season by season, each in the order of the book
   */
  static List<List<Integer>> of(List<OrderLine> lines) {
    List<LocalDate> starts = new ArrayList<>();
    lines.stream()
        .flatMap(line -> line.due().stream())
        .sorted()
        .forEach(
            due -> {
              if (starts.isEmpty()
                  || !due.isBefore(starts.get(starts.size() - 1).plusMonths(MONTHS))) {
                starts.add(due);
              }
            });
    List<List<Integer>> seasons = new ArrayList<>();
    for (int season = 0; season < Math.max(1, starts.size()); season++) {
      int wanted = season;
      seasons.add(
          IntStream.range(0, lines.size())
              .filter(i -> season(lines.get(i).due(), starts) == wanted)
              .boxed()
              .toList());
    }
    return seasons;
  }

  private static int season(Optional<LocalDate> due, List<LocalDate> starts) {
    return due.map(day -> (int) starts.stream().filter(start -> !start.isAfter(day)).count() - 1)
        .orElse(0);
  }
}
