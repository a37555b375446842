package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.publish.privacy.Disclosure.Request;

class DisclosureTest {

  private static final int CIRCLES = 400;

  /** The tables of a season page, for a circle. */
  private static List<PublishedTable> tables(Cells cells, PrivacyRule rule) {
    GraftsByMember evidence = new GraftsByMember(cells, "grafter");
    List<String> seasons = evidence.levels("season");
    BitSet latest = evidence.level("season", seasons.get(seasons.size() - 1));
    return new Disclosure(evidence, rule)
        .tables(
            List.of(
                new Request("seasons", "season", evidence.all()),
                new Request("cultivars", "cultivar", evidence.all()),
                new Request("rootstocks", "rootstock", evidence.all()),
                new Request("latest", "cultivar", latest)));
  }

  /** The rule written again, from the cells, so that the test doesn't trust the code it tests. */
  private static boolean mayBeShown(Cells cells, BitSet group, PrivacyRule rule) {
    Factor member = cells.factor("grafter");
    Map<Integer, Integer> byMember = new HashMap<>();
    int grafts = 0;
    int takes = 0;
    for (int i : group.stream().toArray()) {
      byMember.merge(member.code(i), cells.grafts(i), Integer::sum);
      grafts += cells.grafts(i);
      takes += cells.takes(i);
    }
    long people = byMember.keySet().stream().filter(code -> code >= 0).count();
    int largest = byMember.values().stream().mapToInt(g -> g).max().orElse(0);
    boolean extreme = takes == 0 || takes == grafts;
    return grafts >= rule.grafts()
        && people >= (extreme ? Math.max(rule.members(), 5) : rule.members())
        && largest <= rule.largestShare() * grafts;
  }

  private static List<BitSet> entries(List<PublishedTable> tables) {
    return tables.stream()
        .flatMap(table -> table.entries().stream())
        .map(PublishedTable.Entry::cells)
        .toList();
  }

  @Test
  void every_entry_published_may_be_shown_by_itself() {
    for (PrivacyRule rule : List.of(PrivacyRule.usual(), PrivacyRule.strict())) {
      for (int seed = 0; seed < CIRCLES; seed++) {
        Cells cells = Circle.random(seed).cells();
        for (PublishedTable table : tables(cells, rule)) {
          for (PublishedTable.Entry entry : table.entries()) {
            assertThat(mayBeShown(cells, entry.cells(), rule))
                .as("circle %d, table %s, %s", seed, table.name(), entry.levels())
                .isTrue();
            assertThat(entry.merged()).isEqualTo(entry.levels().size() > 1);
          }
        }
      }
    }
  }

  @Test
  void entries_never_overlap_and_add_up_to_all_grafts_of_the_table() {
    for (int seed = 0; seed < CIRCLES; seed++) {
      Cells cells = Circle.random(seed).cells();
      for (PublishedTable table : tables(cells, PrivacyRule.usual())) {
        BitSet seen = new BitSet();
        for (PublishedTable.Entry entry : table.entries()) {
          assertThat(seen.intersects(entry.cells())).as("circle " + seed).isFalse();
          seen.or(entry.cells());
        }
        if (!table.name().equals("latest")) {
          assertThat(seen.cardinality()).as("circle " + seed).isEqualTo(cells.size());
        }
      }
    }
  }

  /**
   * Every member, level, and what two of them have in common, if it may not be shown: its counts
   * must not be a linear combination of published counts. Checked by ranks (singular values), not
   * by the arithmetic of the code.
   */
  @Test
  void nothing_left_out_follows_from_all_published_counts_together() {
    int checked = 0;
    for (int seed = 0; seed < CIRCLES / 4; seed++) {
      Cells cells = Circle.random(seed).cells();
      List<BitSet> published = entries(tables(cells, PrivacyRule.usual()));
      int rank = rank(published, cells.size());
      for (BitSet group : namedGroups(cells)) {
        if (!mayBeShown(cells, group, PrivacyRule.usual())) {
          List<BitSet> with = new ArrayList<>(published);
          with.add(group);
          assertThat(rank(with, cells.size())).as("circle %d, %s", seed, group).isEqualTo(rank + 1);
          checked++;
        }
      }
    }
    assertThat(checked).isGreaterThan(5000);
  }

  private static int rank(List<BitSet> groups, int cells) {
    if (groups.isEmpty()) {
      return 0;
    }
    double[][] rows = new double[groups.size()][cells];
    for (int i = 0; i < rows.length; i++) {
      for (int cell : groups.get(i).stream().toArray()) {
        rows[i][cell] = 1;
      }
    }
    return new SingularValueDecomposition(new Array2DRowRealMatrix(rows)).getRank();
  }

  private static List<BitSet> namedGroups(Cells cells) {
    Set<BitSet> groups = new HashSet<>();
    for (Factor one : cells.factors()) {
      for (Factor other : cells.factors()) {
        for (int a = -1; a < one.size(); a++) {
          for (int b = -1; b < other.size(); b++) {
            BitSet group = new BitSet();
            for (int i = 0; i < cells.size(); i++) {
              group.set(i, one.code(i) == a && other.code(i) == b);
            }
            if (!group.isEmpty()) {
              groups.add(group);
            }
          }
        }
      }
    }
    return List.copyOf(groups);
  }

  /**
   * Any entries of one table less any entries of another that lie inside them: what is left must be
   * nothing, or enough. All choices tried.
   */
  @Test
  void no_choice_of_entries_subtracted_from_another_leaves_too_little() {
    PrivacyRule rule = PrivacyRule.usual();
    for (int seed = 0; seed < CIRCLES; seed++) {
      Cells cells = Circle.random(seed).cells();
      List<PublishedTable> tables = tables(cells, rule);
      for (PublishedTable wholes : tables) {
        for (PublishedTable parts : tables) {
          List<BitSet> whole = entries(List.of(wholes));
          for (int choice = 1; choice < 1 << whole.size(); choice++) {
            BitSet rest = union(whole, choice);
            BitSet chosen = (BitSet) rest.clone();
            entries(List.of(parts)).stream()
                .filter(part -> inside(part, chosen))
                .forEach(rest::andNot);
            if (!rest.isEmpty() && !rest.equals(chosen)) {
              assertThat(mayBeShown(cells, rest, rule))
                  .as("circle %d, %s less %s", seed, wholes.name(), parts.name())
                  .isTrue();
            }
          }
        }
      }
    }
  }

  private static BitSet union(List<BitSet> groups, int choice) {
    BitSet union = new BitSet();
    IntStream.range(0, groups.size())
        .filter(i -> (choice >> i & 1) == 1)
        .forEach(i -> union.or(groups.get(i)));
    return union;
  }

  private static boolean inside(BitSet part, BitSet whole) {
    BitSet outside = (BitSet) part.clone();
    outside.andNot(whole);
    return outside.isEmpty();
  }

  /** A rule that hides everything would pass the tests above. */
  @Test
  void most_of_what_may_be_shown_is_shown() {
    int shown = 0;
    int showable = 0;
    for (int seed = 0; seed < CIRCLES; seed++) {
      Cells cells = Circle.random(seed).cells();
      GraftsByMember evidence = new GraftsByMember(cells, "grafter");
      for (String cultivar : evidence.levels("cultivar")) {
        showable +=
            mayBeShown(cells, evidence.level("cultivar", cultivar), PrivacyRule.usual()) ? 1 : 0;
      }
      for (PublishedTable table : tables(cells, PrivacyRule.usual())) {
        shown += table.name().equals("cultivars") ? table.shown().size() : 0;
      }
    }
    assertThat(shown).isGreaterThan((int) (0.7 * showable));
  }
}
