package org.taketally.answers.survival;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * The rounds in which later counts were made. Rows are not all counted on one day; a loss found on
 * day 55 in one row and day 64 in another belong to one round, or grafts counted early would seem
 * to have been lost sooner.
 *
 * <p>A new round begins where no row was counted for a week. Where that puts two counts of one row
 * into one round, rounds go by the order of each row's counts instead.
 *
 * @param rounds in order
 * @param areApart whether rounds are parted by days without counts; if not, shares lost by a given
 *     day are rough
 */
record CountingRounds(List<LateLoss.Round> rounds, boolean areApart) {

  private static final long DAYS_WITHOUT_COUNTS = 7;

  /** Rounds of rows that were counted more than once. */
  static CountingRounds of(List<CountedRow> rows) {
    List<LateLoss.Round> apart = byGaps(rows);
    boolean clash =
        rows.stream()
            .anyMatch(
                row -> {
                  for (int k = 2; k < row.counts().size(); k++) {
                    if (place(apart, row.daysAfterFirst(k))
                        == place(apart, row.daysAfterFirst(k - 1))) {
                      return true;
                    }
                  }
                  return false;
                });
    return clash ? new CountingRounds(byOrder(rows), false) : new CountingRounds(apart, true);
  }

  private static List<LateLoss.Round> byGaps(List<CountedRow> rows) {
    TreeMap<Long, Long> days = new TreeMap<>();
    for (CountedRow row : rows) {
      for (int k = 1; k < row.counts().size(); k++) {
        days.merge(row.daysAfterFirst(k), 1L, Long::sum);
      }
    }
    List<LateLoss.Round> rounds = new ArrayList<>();
    TreeMap<Long, Long> round = new TreeMap<>();
    for (long day : days.keySet()) {
      if (!round.isEmpty() && day - round.lastKey() > DAYS_WITHOUT_COUNTS) {
        rounds.add(round(round));
        round.clear();
      }
      round.put(day, days.get(day));
    }
    rounds.add(round(round));
    return rounds;
  }

  private static List<LateLoss.Round> byOrder(List<CountedRow> rows) {
    List<LateLoss.Round> rounds = new ArrayList<>();
    int most = rows.stream().mapToInt(row -> row.counts().size()).max().orElseThrow();
    for (int k = 1; k < most; k++) {
      TreeMap<Long, Long> days = new TreeMap<>();
      for (CountedRow row : rows) {
        if (k < row.counts().size()) {
          days.merge(row.daysAfterFirst(k), 1L, Long::sum);
        }
      }
      rounds.add(round(days));
    }
    return rounds;
  }

  /** From, to, and the middle day of all counts in it. */
  private static LateLoss.Round round(TreeMap<Long, Long> days) {
    long half = (days.values().stream().mapToLong(count -> count).sum() + 1) / 2;
    long middle = days.firstKey();
    long soFar = 0;
    for (long day : days.keySet()) {
      if (soFar < half) {
        middle = day;
      }
      soFar += days.get(day);
    }
    return new LateLoss.Round(days.firstKey(), days.lastKey(), middle);
  }

  private static int place(List<LateLoss.Round> rounds, long day) {
    for (int i = 0; i < rounds.size(); i++) {
      if (day <= rounds.get(i).to()) {
        return i;
      }
    }
    throw new IllegalArgumentException("day %d is after the last round".formatted(day));
  }

  /**
   * A row's grafts, dated by round: those alive at the first count watched from it on, late
   * starters from when they were first seen alive. A graft not seen in one count but in a later one
   * had been overlooked. Where both could have happened between two counts, losses are not more
   * than counted.
   */
  List<FollowUp> followUps(CountedRow row) {
    List<FollowUp> grafts = new ArrayList<>();
    ArrayDeque<Joined> watched = new ArrayDeque<>();
    join(watched, 0, row.seenBy(0));
    int round = 0;
    for (int k = 1; k < row.counts().size(); k++) {
      round = areApart ? place(rounds, row.daysAfterFirst(k)) + 1 : k;
      long more = row.seenBy(k) - row.seenBy(k - 1);
      for (long lost = -more; lost > 0; ) {
        Joined first = watched.pop();
        long now = Math.min(lost, first.grafts());
        grafts.add(new FollowUp(first.round(), round, true, now));
        if (now < first.grafts()) {
          watched.push(new Joined(first.round(), first.grafts() - now));
        }
        lost -= now;
      }
      join(watched, round, more);
    }
    for (Joined left : watched) {
      grafts.add(new FollowUp(left.round(), round, false, left.grafts()));
    }
    return grafts;
  }

  private static void join(ArrayDeque<Joined> watched, int round, long grafts) {
    if (grafts > 0) {
      watched.add(new Joined(round, grafts));
    }
  }

  /** Grafts watched since a round. */
  private record Joined(int round, long grafts) {}
}
