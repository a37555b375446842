package org.taketally.publish.privacy;

import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.publish.privacy.PublishedBefore.Line;

/**
 * Who may have made the grafts that came late to an earlier page. Counts alone don't say which rows
 * they are: any rows of today of which each line of the page has as many more as it needs could be
 * the late ones.
 */
final class LateHands {

  private static final int NOBODY = 0;

  private final GraftsByMember evidence;

  LateHands(GraftsByMember evidence) {
    this.evidence = evidence;
  }

  /**
   * A line of the earlier page.
   *
   * @param line as published
   * @param today cells it would hold today
   */
  record LineToday(Line line, BitSet today) {}

  /**
   * Whether what is new may be the work of fewer people than it seems, so that one of two could
   * tell the other's: the late grafts seem to be of three or more, or there are no three with those
   * of other seasons, and two members hold enough grafts and takes in each line to have made all.
   *
   * @param lines every line of the earlier page
   * @param late the grafts that seem to be late
   * @param fresh grafts of seasons the page wasn't about
   */
  boolean mayBeOfTwo(List<LineToday> lines, BitSet late, BitSet fresh) {
    List<Room> rooms = lines.stream().map(this::room).toList();
    int members = evidence.names().count();
    boolean hidden = evidence.members(late) > 2;
    BitSet others = new BitSet();
    fresh.stream().map(cell -> evidence.member(cell) + 1).forEach(others::set);
    others.clear(NOBODY);
    return IntStream.rangeClosed(1, members)
        .anyMatch(
            one ->
                IntStream.rangeClosed(one, members)
                    .filter(two -> hidden || with(others, one, two).cardinality() < 3)
                    .anyMatch(two -> rooms.stream().allMatch(room -> room.holds(one, two))));
  }

  private static BitSet with(BitSet others, int one, int two) {
    BitSet all = (BitSet) others.clone();
    all.set(one);
    all.set(two);
    return all;
  }

  private Room room(LineToday line) {
    long[] takes = new long[1 + evidence.names().count()];
    long[] failures = takes.clone();
    line.today().stream()
        .forEach(
            cell -> {
              BitSet one = new BitSet();
              one.set(cell);
              TakeCount count = evidence.count(one);
              takes[evidence.member(cell) + 1] += count.takes();
              failures[evidence.member(cell) + 1] += count.failures();
            });
    TakeCount now = evidence.count(line.today());
    long earlier = line.line().grafts() - line.line().takes();
    return new Room(takes, failures, now.takes() - line.line().takes(), now.failures() - earlier);
  }

  /** Takes and failures of each member in a line, nobody's first, and how many of them are late. */
  private record Room(long[] takes, long[] failures, long lateTakes, long lateFailures) {

    boolean holds(int one, int two) {
      return of(takes, one, two) >= lateTakes && of(failures, one, two) >= lateFailures;
    }

    private static long of(long[] counts, int one, int two) {
      return counts[NOBODY] + counts[one] + (one == two ? 0 : counts[two]);
    }
  }
}
