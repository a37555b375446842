package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.answers.counts.TakeCount;
import org.taketally.publish.privacy.PublishedBefore.EarlierPage;
import org.taketally.publish.privacy.PublishedBefore.Kind;
import org.taketally.publish.privacy.PublishedBefore.Line;

/**
 * Finds the grafts behind the counts of an earlier page among the records of today. Where results
 * were added to its seasons since, it looks for the few batches (a member's season, or cultivar in
 * a season) without which every count of the page comes out.
 */
final class EarlierGrafts {

  private static final String SEASON = "season";
  private static final int MOST_LATE_BATCHES = 3;

  private final Evidence evidence;
  private final Map<String, BitSet> levels = new LinkedHashMap<>();

  EarlierGrafts(Evidence evidence) {
    this.evidence = evidence;
  }

  /**
   * An earlier page found again.
   *
   * @param tables its tables, of the records' cells
   * @param late grafts of its seasons that weren't in it
   */
  record Found(List<PublishedTable> tables, BitSet late) {}

  /** The page's tables; empty if no few batches explain the difference. */
  Optional<Found> find(EarlierPage page) {
    BitSet nothing = new BitSet();
    if (agrees(page, nothing)) {
      return Optional.of(found(page, nothing));
    }
    BitSet scope = seasons(page.seasons());
    return late(page, batches(scope)).map(late -> found(page, late));
  }

  private Optional<BitSet> late(EarlierPage page, List<BitSet> batches) {
    for (int depth = 1; depth <= MOST_LATE_BATCHES; depth++) {
      Optional<BitSet> late = exactly(depth, page, batches, 0, new BitSet());
      if (late.isPresent()) {
        return late;
      }
    }
    return Optional.empty();
  }

  private Optional<BitSet> exactly(
      int more, EarlierPage page, List<BitSet> batches, int from, BitSet without) {
    if (more == 0) {
      return agrees(page, without) ? Optional.of(without) : Optional.empty();
    }
    long[] over = tooMany(page, without);
    for (int b = from; b < batches.size(); b++) {
      BitSet next = batches.get(b);
      TakeCount count = evidence.count(next);
      boolean fits =
          more == 1
              ? count.grafts() == over[0] && count.takes() == over[1]
              : count.grafts() < over[0] && count.takes() <= over[1];
      if (fits && !next.intersects(without)) {
        BitSet both = (BitSet) without.clone();
        both.or(next);
        Optional<BitSet> late = exactly(more - 1, page, batches, b + 1, both);
        if (late.isPresent()) {
          return late;
        }
      }
    }
    return Optional.empty();
  }

  /** Grafts and takes of the page's whole today, beyond those published. */
  private long[] tooMany(EarlierPage page, BitSet without) {
    Line whole = page.lines().get(0);
    BitSet today = seasons(whole.seasons());
    today.andNot(without);
    TakeCount count = today.isEmpty() ? null : evidence.count(today);
    return count == null
        ? new long[] {-1, -1}
        : new long[] {count.grafts() - whole.grafts(), count.takes() - whole.takes()};
  }

  private List<BitSet> batches(BitSet scope) {
    Map<List<Object>, BitSet> batches = new LinkedHashMap<>();
    for (String column : List.of("", "cultivar")) {
      scope.stream()
          .filter(cell -> evidence.member(cell) >= 0)
          .forEach(
              cell ->
                  batches
                      .computeIfAbsent(
                          List.of(
                              evidence.member(cell),
                              evidence.levelOf(SEASON, cell),
                              column.isEmpty() ? "" : column + evidence.levelOf(column, cell)),
                          key -> new BitSet())
                      .set(cell));
    }
    return List.copyOf(batches.values());
  }

  private boolean agrees(EarlierPage page, BitSet without) {
    return page.lines().stream()
        .allMatch(
            line -> {
              BitSet cells = cells(page, line, without);
              if (cells.isEmpty()) {
                return false;
              }
              TakeCount count = evidence.count(cells);
              return count.grafts() == line.grafts() && count.takes() == line.takes();
            });
  }

  private Found found(EarlierPage page, BitSet late) {
    Map<String, List<PublishedTable.Entry>> tables = new LinkedHashMap<>();
    for (Line line : page.lines()) {
      PublishedTable.Entry entry =
          new PublishedTable.Entry(
              List.of(line.level()), cells(page, line, late), line.kind() == Kind.OTHERS);
      tables.computeIfAbsent(line.table(), name -> new ArrayList<>()).add(entry);
    }
    List<PublishedTable> list = new ArrayList<>();
    tables.forEach((name, entries) -> list.add(new PublishedTable(name, entries)));
    return new Found(list, late);
  }

  private BitSet cells(EarlierPage page, Line line, BitSet without) {
    BitSet cells = seasons(line.seasons());
    cells.andNot(without);
    switch (line.kind()) {
      case ALL -> {}
      case LEVEL -> cells.and(level(line.column(), line.level()));
      case OTHERS ->
          page.lines().stream()
              .filter(l -> l.table().equals(line.table()) && l.kind() == Kind.LEVEL)
              .forEach(l -> cells.andNot(level(l.column(), l.level())));
    }
    return cells;
  }

  private BitSet seasons(List<String> names) {
    BitSet cells = new BitSet();
    if (evidence.levels(SEASON).isEmpty()) {
      return names.equals(List.of("")) ? evidence.all() : cells;
    }
    names.forEach(name -> cells.or(level(SEASON, name)));
    return cells;
  }

  private BitSet level(String column, String level) {
    return levels.computeIfAbsent(
        column + '\n' + level,
        key ->
            evidence.levels(column).contains(level) ? evidence.level(column, level) : new BitSet());
  }
}
