package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/**
 * Who grafted what: the cells of the records by member. A group of grafts is a set of cells.
 *
 * <p>Grafts whose member isn't recorded count as no member at all, and together as one hand when
 * the largest share is looked at. Names are read as {@link MemberNames} does.
 */
public final class GraftsByMember {

  private static final String UNNAMED = "";

  private final Cells cells;
  private final Optional<Factor> grafters;
  private final MemberNames names;

  /**
   * From cells.
   *
   * @param cells by member and every column that is to be published
   * @param memberColumn the column that says who grafted; may be absent from the cells
   */
  public GraftsByMember(Cells cells, String memberColumn) {
    this.cells = cells;
    this.grafters = cells.findFactor(memberColumn);
    this.names = MemberNames.of(grafters.map(Factor::levels).orElse(List.of()));
  }

  /**
   * The names of those who grafted.
   *
   * @return none if there is no such column
   */
  public MemberNames names() {
    return names;
  }

  /**
   * Whether the records say who grafted, at least for some grafts.
   *
   * @return false if members can't be counted
   */
  public boolean namesMembers() {
    return IntStream.range(0, cells.size()).anyMatch(i -> member(i) != Factor.MISSING);
  }

  /**
   * Grafts whose member isn't recorded.
   *
   * @return 0 or more
   */
  public long unnamedGrafts() {
    return where(i -> member(i) == Factor.MISSING).stream().mapToLong(i -> cells.grafts(i)).sum();
  }

  /**
   * All grafts.
   *
   * @return every cell
   */
  public BitSet all() {
    return where(i -> true);
  }

  /**
   * Levels of a column, in its own order.
   *
   * @param column a column of levels
   * @return names; an empty name last if some cells lack it; none if there is no such column
   */
  public List<String> levels(String column) {
    Optional<Factor> factor = cells.findFactor(column);
    if (factor.isEmpty()) {
      return List.of();
    }
    boolean missing = IntStream.of(factor.get().codes()).anyMatch(code -> code < 0);
    return Stream.concat(factor.get().levels().stream(), missing ? Stream.of(UNNAMED) : Stream.of())
        .toList();
  }

  /**
   * The grafts of one level.
   *
   * @param column a column of levels
   * @param level its name; empty for grafts where it isn't recorded
   * @return cells, none if there is no such level
   */
  public BitSet level(String column, String level) {
    Factor factor = cells.factor(column);
    int wanted = level.isEmpty() ? Factor.MISSING : factor.indexOf(level);
    if (wanted == Factor.MISSING && !level.isEmpty()) {
      return new BitSet();
    }
    return where(i -> factor.code(i) == wanted);
  }

  /** The level of a column in a cell; empty if it isn't recorded. */
  String levelOf(String column, int cell) {
    return cells
        .findFactor(column)
        .filter(factor -> factor.code(cell) != Factor.MISSING)
        .map(factor -> factor.levels().get(factor.code(cell)))
        .orElse(UNNAMED);
  }

  /**
   * Grafts that meet a condition.
   *
   * @param condition on the number of the cell, from 0
   * @return cells
   */
  public BitSet where(IntPredicate condition) {
    BitSet group = new BitSet(cells.size());
    IntStream.range(0, cells.size()).filter(condition).forEach(group::set);
    return group;
  }

  /** Number of the member behind a cell, {@link Factor#MISSING} if none is named. */
  int member(int cell) {
    int name = grafters.map(factor -> factor.code(cell)).orElse(Factor.MISSING);
    return name == Factor.MISSING ? name : names.member(name);
  }

  /**
   * Every group someone could ask about by name: each member, each level, and the grafts two of
   * them have in common.
   */
  List<BitSet> namedGroups() {
    List<BitSet> groups = new ArrayList<>();
    List<int[]> codes = cells.factors().stream().map(this::codes).toList();
    for (int f = 0; f < codes.size(); f++) {
      for (int g = f; g < codes.size(); g++) {
        groups.addAll(inCommon(codes.get(f), codes.get(g)));
      }
    }
    return groups;
  }

  private int[] codes(Factor factor) {
    return grafters.filter(own -> own.name().equals(factor.name())).isPresent()
        ? IntStream.range(0, cells.size()).map(this::member).toArray()
        : factor.codes();
  }

  private Collection<BitSet> inCommon(int[] one, int[] other) {
    Map<Long, BitSet> groups = new LinkedHashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      long both = ((long) one[i] << Integer.SIZE) | (other[i] & 0xFFFF_FFFFL);
      groups.computeIfAbsent(both, key -> new BitSet()).set(i);
    }
    return groups.values();
  }

  /**
   * Counts of a group.
   *
   * @param group at least one cell
   * @return grafts assessed and takes
   */
  public TakeCount count(BitSet group) {
    long grafts = group.stream().mapToLong(i -> cells.grafts(i)).sum();
    long takes = group.stream().mapToLong(i -> cells.takes(i)).sum();
    return new TakeCount(takes, grafts);
  }

  /**
   * Members behind a group.
   *
   * @param group cells
   * @return how many are named, 0 or more
   */
  public int members(BitSet group) {
    return (int) LongStream.of(graftsByMember(group)).skip(1).filter(grafts -> grafts > 0).count();
  }

  /** The grafts of each named member. */
  List<BitSet> memberGroups() {
    Map<Integer, BitSet> groups = new LinkedHashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      if (member(i) != Factor.MISSING) {
        groups.computeIfAbsent(member(i), key -> new BitSet()).set(i);
      }
    }
    return List.copyOf(groups.values());
  }

  /** Grafts without a member first, then those of each member. */
  private long[] graftsByMember(BitSet group) {
    long[] grafts = new long[1 + names.count()];
    group.stream().forEach(i -> grafts[member(i) + 1] += cells.grafts(i));
    return grafts;
  }

  /**
   * Whether every part of so many grafts would have enough members and no one with too large a
   * share, whichever grafts it holds. For results whose grafts aren't known one by one.
   *
   * @param part grafts the part holds, and how many of them took, or lived on
   * @param rule thresholds
   * @return false if the records don't say who grafted
   */
  public boolean allowsAnyPartOf(TakeCount part, PrivacyRule rule) {
    long grafts = part.grafts();
    boolean extreme = part.takes() == 0 || part.failures() == 0;
    int people = extreme ? Math.max(rule.members(), rule.membersForExtremes()) : rule.members();
    long[] byMember = graftsByMember(all());
    long unnamed = byMember[0];
    long[] largestFirst =
        LongStream.of(byMember).skip(1).map(g -> -g).sorted().map(g -> -g).toArray();
    long heldByTooFew = unnamed + LongStream.of(largestFirst).limit(people - 1L).sum();
    long largest = Math.max(unnamed, largestFirst.length == 0 ? 0 : largestFirst[0]);
    return namesMembers()
        && grafts >= rule.grafts()
        && grafts > heldByTooFew
        && largest <= rule.largestShare() * grafts;
  }

  /**
   * Whether a group may be shown by itself.
   *
   * @param group cells
   * @param rule thresholds
   * @return false also for a group without grafts, and if the records don't say who grafted
   */
  public boolean allows(BitSet group, PrivacyRule rule) {
    TakeCount count = count(group);
    int people = members(group);
    long largest = LongStream.of(graftsByMember(group)).max().orElse(0);
    return count.grafts() >= rule.grafts()
        && people >= rule.members()
        && largest <= rule.largestShare() * count.grafts()
        && (people >= rule.membersForExtremes() || !extremeForSomeone(group));
  }

  /**
   * Whether none or all took of what is left to someone who takes off grafts without a name, which
   * hide nobody, and their own.
   */
  private boolean extremeForSomeone(BitSet group) {
    return IntStream.concat(IntStream.of(Factor.MISSING), group.stream().map(this::member))
        .distinct()
        .anyMatch(
            someone -> {
              BitSet others = new BitSet();
              group.stream()
                  .filter(cell -> member(cell) != Factor.MISSING && member(cell) != someone)
                  .forEach(others::set);
              TakeCount left = count(others);
              return left.grafts() > 0 && (left.takes() == 0 || left.failures() == 0);
            });
  }
}
