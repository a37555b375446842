package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.taketally.cells.Factor;

/**
 * What a member can learn of one other from published counts and their own results.
 *
 * <pre>
 *   R       one row per published entry, one column per cell: 1 if the entry holds the cell
 *   R[-m]   the columns of all named members but m: what m doesn't know beforehand
 * </pre>
 *
 * Some sum of multiples of entries is about member o alone, apart from m's own grafts, exactly if
 * leaving out o's columns too lowers the rank: rank R[-m] &gt; rank R[-m,-o]. Grafts without a name
 * hide nobody, so their columns are left out always. Columns that are alike are taken once.
 */
final class Insiders {

  private final Map<List<Integer>, Set<Integer>> holders = new LinkedHashMap<>();
  private final int entries;

  Insiders(GraftsByMember evidence, List<PublishedTable> tables) {
    Map<Integer, List<Integer>> entriesOfCell = new HashMap<>();
    int row = 0;
    for (PublishedTable table : tables) {
      for (PublishedTable.Entry entry : table.entries()) {
        int number = row++;
        entry.cells().stream()
            .forEach(
                cell -> entriesOfCell.computeIfAbsent(cell, c -> new ArrayList<>()).add(number));
      }
    }
    this.entries = row;
    entriesOfCell.forEach(
        (cell, column) -> {
          int member = evidence.member(cell);
          if (member != Factor.MISSING) {
            holders.computeIfAbsent(column, c -> new TreeSet<>()).add(member);
          }
        });
  }

  /** Whether anyone, knowing at most their own results, learns of one member alone. */
  boolean learnOfOneMember() {
    ModularBasis common = new ModularBasis();
    Map<List<Integer>, Set<Integer>> rare = new LinkedHashMap<>();
    holders.forEach(
        (column, members) -> {
          if (members.size() > 2) {
            common.add(vector(column));
          } else {
            rare.put(column, members);
          }
        });
    BitSet suspects = new BitSet();
    rare.values().forEach(members -> members.forEach(suspects::set));
    if (rank(common, rare, -1, -1) == common.rank()) {
      return false;
    }
    return suspects.stream().anyMatch(of -> told(common, rare, -1, of))
        || suspects.stream()
            .anyMatch(m -> suspects.stream().anyMatch(of -> of != m && told(common, rare, m, of)));
  }

  private boolean told(
      ModularBasis common, Map<List<Integer>, Set<Integer>> rare, int insider, int of) {
    return rank(common, rare, insider, insider) > rank(common, rare, insider, of);
  }

  /** Rank of the columns that some member other than these two holds. */
  private int rank(
      ModularBasis common, Map<List<Integer>, Set<Integer>> rare, int insider, int of) {
    ModularBasis basis = common.copy();
    rare.forEach(
        (column, members) -> {
          if (members.stream().anyMatch(member -> member != insider && member != of)) {
            basis.add(vector(column));
          }
        });
    return basis.rank();
  }

  private long[] vector(List<Integer> column) {
    long[] vector = new long[entries];
    column.forEach(entry -> vector[entry] = 1);
    return vector;
  }
}
