package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.answers.counts.TakeCount;
import org.taketally.publish.privacy.PublishedBefore.EarlierPage;
import org.taketally.publish.privacy.PublishedBefore.Kind;
import org.taketally.publish.privacy.PublishedBefore.Line;
import org.taketally.records.columns.RecordColumn;

/**
 * Finds the grafts behind the counts of an earlier page among the records of today. Where results
 * were added to its seasons since, it looks for the few batches (a member's season, cultivar in a
 * season, or single cell) without which every count of the page comes out. If several choices of
 * batches would do, it isn't known which is true, and the page counts as not found.
 */
final class EarlierGrafts {

  private static final String SEASON = RecordColumn.SEASON.columnName();
  private static final int MOST_LATE_BATCHES = 3;
  private static final int FEW = 200;

  private final GraftsByMember evidence;
  private final Map<String, BitSet> levels = new LinkedHashMap<>();

  EarlierGrafts(GraftsByMember evidence) {
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

  /** The only set of few batches without which all counts come out; empty if there are others. */
  private Optional<BitSet> late(EarlierPage page, List<BitSet> batches) {
    List<Batch> counted =
        batches.stream().map(cells -> new Batch(cells, evidence.count(cells))).toList();
    Line whole = page.lines().get(0);
    BitSet today = seasons(whole.seasons());
    Set<BitSet> explanations = new LinkedHashSet<>();
    if (!today.isEmpty()) {
      TakeCount count = evidence.count(today);
      Missing over = new Missing(count.grafts() - whole.grafts(), count.takes() - whole.takes());
      Search search = new Search(page, counted, explanations);
      search(search, 0, search.most(), over, new BitSet());
    }
    return explanations.size() == 1 ? explanations.stream().findFirst() : Optional.empty();
  }

  private record Batch(BitSet cells, TakeCount count) {}

  private record Missing(long grafts, long takes) {}

  private record Search(EarlierPage page, List<Batch> batches, Set<BitSet> explanations) {

    /** So many batches may be late at once that looking through all choices ends soon. */
    int most() {
      int count = batches.size();
      return count <= FEW ? MOST_LATE_BATCHES : count <= FEW * FEW ? 2 : 1;
    }
  }

  private void search(Search search, int from, int more, Missing over, BitSet without) {
    for (int b = from; b < search.batches().size() && search.explanations().size() < 2; b++) {
      Batch next = search.batches().get(b);
      long grafts = over.grafts() - next.count().grafts();
      long takes = over.takes() - next.count().takes();
      if (grafts < 0 || takes < 0 || next.cells().intersects(without)) {
        continue;
      }
      BitSet both = (BitSet) without.clone();
      both.or(next.cells());
      if (grafts == 0 && takes == 0 && agrees(search.page(), both)) {
        search.explanations().add(both);
      } else if (grafts > 0 && more > 1) {
        search(search, b + 1, more - 1, new Missing(grafts, takes), both);
      }
    }
  }

  private List<BitSet> batches(BitSet scope) {
    Map<List<Object>, BitSet> batches = new LinkedHashMap<>();
    for (String column : List.of("", RecordColumn.CULTIVAR.columnName())) {
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
    List<BitSet> all = new ArrayList<>(batches.values());
    scope.stream()
        .forEach(
            cell -> {
              BitSet one = new BitSet();
              one.set(cell);
              all.add(one);
            });
    return all.stream().distinct().toList();
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

  /** Whether the late grafts of a page that was found may be those of two people, or of one. */
  boolean lateMayBeOfTwo(EarlierPage page, BitSet late) {
    BitSet fresh = evidence.all();
    fresh.andNot(seasons(page.seasons()));
    List<LateHands.LineToday> lines =
        page.lines().stream()
            .map(line -> new LateHands.LineToday(line, cells(page, line, new BitSet())))
            .toList();
    return !late.isEmpty() && new LateHands(evidence).mayBeOfTwo(lines, late, fresh);
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

  /**
   * All grafts a page may be about, where they aren't found: where the page or the records of today
   * lack seasons, any of them.
   */
  BitSet mayBeAbout(EarlierPage page) {
    boolean anySeason = page.seasons().contains("") || evidence.levels(SEASON).isEmpty();
    return anySeason ? evidence.all() : seasons(page.seasons());
  }

  /** Grafts of some seasons; all if a page had none and today's records have one for each graft. */
  private BitSet seasons(List<String> names) {
    if (names.equals(List.of("")) && !evidence.levels(SEASON).contains("")) {
      return evidence.all();
    }
    BitSet cells = new BitSet();
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
