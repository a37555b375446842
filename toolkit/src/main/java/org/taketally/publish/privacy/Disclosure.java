package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Makes tables that may be published side by side.
 *
 * <p>Three steps. Levels that may not be shown are counted together, with the smallest of the
 * others if needed, until that entry may be shown too. Then no entry may be cut out of an entry of
 * an earlier table so that something remains that may not be shown. Last, no member and no level
 * that may not be shown may follow from all published counts by any adding and subtracting, nor may
 * anything about one member alone, also not for a member who adds what they know of their own; more
 * is counted together until that holds, or the table is left out.
 */
public final class Disclosure {

  private final GraftsByMember evidence;
  private final PrivacyRule rule;

  /**
   * For some records and a rule.
   *
   * @param evidence who grafted what
   * @param rule thresholds
   */
  public Disclosure(GraftsByMember evidence, PrivacyRule rule) {
    this.evidence = evidence;
    this.rule = rule;
  }

  /**
   * A table asked for.
   *
   * @param name what it is called
   * @param column its column of levels
   * @param within the grafts it is about
   */
  public record Request(String name, String column, BitSet within) {}

  /**
   * The tables that may be published together.
   *
   * @param requests most important first; each may lose detail to those before it
   * @return tables in the same order; those that would have to lose all detail are absent
   */
  public List<PublishedTable> tables(List<Request> requests) {
    return tables(requests, List.of());
  }

  /**
   * The tables that may be published together, others being known already.
   *
   * @param requests most important first; each may lose detail to those before it
   * @param known tables published before; they may be nothing that these records would allow today
   * @return new tables in the order asked for
   */
  public List<PublishedTable> tables(List<Request> requests, List<PublishedTable> known) {
    List<PublishedTable> together = new ArrayList<>(known);
    for (Request request : requests) {
      if (evidence.allows(request.within(), rule)) {
        table(request, together).ifPresent(together::add);
      }
    }
    return List.copyOf(together.subList(known.size(), together.size()));
  }

  /**
   * Whether the counts of a whole may be published, others being known already.
   *
   * @param whole all grafts of a page
   * @param known tables published before
   * @return false if it tells, or would together with them
   */
  public boolean allowsWhole(BitSet whole, List<PublishedTable> known) {
    PublishedTable table = PublishedTable.ofAll(whole);
    return evidence.allows(whole, rule)
        && leavesTooLittle(table, known).isEmpty()
        && !giveAway(table, known);
  }

  private Optional<PublishedTable> table(Request request, List<PublishedTable> earlier) {
    PublishedTable table = withSmallMerged(everyLevel(request));
    while (detailed(table)) {
      Optional<PublishedTable.Entry> tooMuch = leavesTooLittle(table, earlier);
      if (tooMuch.isEmpty() && !giveAway(table, earlier)) {
        return Optional.of(table);
      }
      PublishedTable.Entry merged = tooMuch.orElseGet(table.smallest(evidence)::orElseThrow);
      table = withSmallMerged(table.merging(List.of(merged)));
    }
    return Optional.empty();
  }

  private static boolean detailed(PublishedTable table) {
    return !table.shown().isEmpty();
  }

  private PublishedTable everyLevel(Request request) {
    List<PublishedTable.Entry> entries = new ArrayList<>();
    for (String level : evidence.levels(request.column())) {
      BitSet cells = evidence.level(request.column(), level);
      cells.and(request.within());
      if (!cells.isEmpty()) {
        entries.add(new PublishedTable.Entry(List.of(level), cells, false));
      }
    }
    return new PublishedTable(request.name(), entries);
  }

  private PublishedTable withSmallMerged(PublishedTable table) {
    PublishedTable result =
        table.merging(
            table.entries().stream()
                .filter(entry -> !entry.merged() && !evidence.allows(entry.cells(), rule))
                .toList());
    while (!showable(result)) {
      Optional<PublishedTable.Entry> smallest = result.smallest(evidence);
      if (smallest.isEmpty()) {
        break;
      }
      result = result.merging(List.of(smallest.get()));
    }
    return result;
  }

  private boolean showable(PublishedTable table) {
    return table.entries().stream().allMatch(entry -> evidence.allows(entry.cells(), rule));
  }

  /**
   * An entry of the table that has to go, because subtracting it, or from it, leaves too little.
   */
  private Optional<PublishedTable.Entry> leavesTooLittle(
      PublishedTable table, List<PublishedTable> earlier) {
    for (PublishedTable other : earlier) {
      for (PublishedTable.Entry entry : table.entries()) {
        if (remainderTooSmall(entry.cells(), table, other)) {
          return entry.merged() ? table.smallest(evidence) : Optional.of(entry);
        }
      }
      for (PublishedTable.Entry entry : other.entries()) {
        if (remainderTooSmall(entry.cells(), other, table)) {
          return touching(entry.cells(), table).stream()
              .filter(e -> !e.merged())
              .findFirst()
              .or(() -> table.smallest(evidence));
        }
      }
    }
    return Optional.empty();
  }

  /**
   * Whether a part of one table, subtracted from the entries of another that together cover it,
   * leaves too little. All parts those entries cover are subtracted with it.
   */
  private boolean remainderTooSmall(BitSet part, PublishedTable parts, PublishedTable wholes) {
    BitSet rest = new BitSet();
    touching(part, wholes).forEach(whole -> rest.or(whole.cells()));
    if (!covers(rest, part)) {
      return false;
    }
    BitSet cover = (BitSet) rest.clone();
    parts.entries().stream()
        .map(PublishedTable.Entry::cells)
        .filter(cells -> covers(cover, cells))
        .forEach(rest::andNot);
    return !rest.isEmpty() && !evidence.allows(rest, rule);
  }

  private static List<PublishedTable.Entry> touching(BitSet part, PublishedTable table) {
    return table.entries().stream().filter(entry -> entry.cells().intersects(part)).toList();
  }

  private static boolean covers(BitSet whole, BitSet part) {
    BitSet outside = (BitSet) part.clone();
    outside.andNot(whole);
    return outside.isEmpty();
  }

  /** Whether something that may not be shown follows from all published counts together. */
  private boolean giveAway(PublishedTable table, List<PublishedTable> earlier) {
    List<PublishedTable> all = new ArrayList<>(earlier);
    all.add(table);
    if (new Insiders(evidence, all).learnOfOneMember()) {
      return true;
    }
    Span span = new Span(all);
    return evidence.namedGroups().stream()
        .anyMatch(group -> !evidence.allows(group, rule) && span.holds(group));
  }
}
