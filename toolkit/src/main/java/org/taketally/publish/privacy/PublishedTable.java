package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A table as it may be published: each entry one level, the rest counted together. Its entries
 * never overlap, and together they hold all its grafts.
 *
 * @param name what the table is called
 * @param entries in the order of the column's levels, the merged one last
 */
public record PublishedTable(String name, List<Entry> entries) {

  /**
   * One line of the table.
   *
   * @param levels the levels it holds; more than one if they are counted together
   * @param cells its grafts
   * @param merged whether it is the entry of all levels counted together
   */
  public record Entry(List<String> levels, BitSet cells, boolean merged) {}

  /** Name of the table that holds all grafts in one line. */
  static final String ALL = "all";

  public PublishedTable {
    entries = List.copyOf(entries);
  }

  /** All grafts of a page as a table of one line. */
  static PublishedTable ofAll(BitSet cells) {
    return new PublishedTable(ALL, List.of(new Entry(List.of(ALL), cells, false)));
  }

  /**
   * The entry of a level that stands by itself.
   *
   * @param level its name
   * @return the entry, if the level isn't merged with others
   */
  public Optional<Entry> of(String level) {
    return entries.stream().filter(e -> !e.merged() && e.levels().contains(level)).findFirst();
  }

  /**
   * The levels that stand by themselves.
   *
   * @return names
   */
  public List<String> shown() {
    return entries.stream().filter(e -> !e.merged()).map(e -> e.levels().get(0)).toList();
  }

  /**
   * The levels that are counted together.
   *
   * @return names, none if nothing had to be merged
   */
  public List<String> merged() {
    return entries.stream().filter(Entry::merged).flatMap(e -> e.levels().stream()).toList();
  }

  /** The same table with some entries counted together with those that already are. */
  PublishedTable merging(List<Entry> more) {
    List<Entry> kept = new ArrayList<>();
    List<String> levels = new ArrayList<>();
    BitSet cells = new BitSet();
    for (Entry entry : entries) {
      if (entry.merged() || more.contains(entry)) {
        levels.addAll(entry.levels());
        cells.or(entry.cells());
      } else {
        kept.add(entry);
      }
    }
    if (!levels.isEmpty()) {
      kept.add(new Entry(List.copyOf(levels), cells, true));
    }
    return new PublishedTable(name, kept);
  }

  /** The smallest entry that stands by itself. */
  Optional<Entry> smallest(GraftsByMember evidence) {
    return entries.stream()
        .filter(e -> !e.merged())
        .min(Comparator.comparingLong(e -> evidence.count(e.cells()).grafts()));
  }
}
