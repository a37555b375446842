package org.taketally.answers.survival;

import java.util.IdentityHashMap;
import java.util.List;

/** What became of the grafts of each row, worked out once for all levels and tests. */
final class FollowUps {

  private final IdentityHashMap<CountedRow, List<FollowUp>> ofRows = new IdentityHashMap<>();

  /**
   * Works them out.
   *
   * @param rows rows that were counted more than once
   * @param rounds when they were counted
   */
  FollowUps(List<CountedRow> rows, CountingRounds rounds) {
    rows.forEach(row -> ofRows.put(row, List.copyOf(rounds.followUps(row))));
  }

  /**
   * A row's grafts, dated by round.
   *
   * @param row one of the rows
   * @return grafts alike taken together
   */
  List<FollowUp> of(CountedRow row) {
    return ofRows.get(row);
  }
}
