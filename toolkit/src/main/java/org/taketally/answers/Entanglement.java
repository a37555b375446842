package org.taketally.answers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.taketally.cells.Cells;

/**
 * What was compared with what: whether the levels of one factor were used within the same
 * cultivars, grafters and seasons, or apart.
 *
 * @param compared the factor the question is about
 * @param groups groups of its levels that can be compared with each other, largest first; one group
 *     if all can
 * @param efficiency share of the information about its differences that is left once every other
 *     factor is allowed for, 0 to 1; within the first group
 * @param ties how it, and other factors, hang together: those of the compared factor first, then
 *     least information first
 * @param grafts grafts behind it
 */
public record Entanglement(
    String compared, List<Group> groups, double efficiency, List<Tie> ties, long grafts)
    implements Answer {

  /** Two levels with less than this share of the information left can't be compared. */
  public static final double ENTANGLED_BELOW = 0.10;

  /** Below this share of the information left, a comparison is worth a warning. */
  public static final double WARN_BELOW = 0.50;

  public Entanglement {
    groups = List.copyOf(groups);
    ties = List.copyOf(ties);
  }

  /**
   * Levels that can be compared with each other.
   *
   * @param levels of the compared factor
   * @param cultivars cultivars grafted on them, if recorded
   * @param grafts grafts in the group
   */
  public record Group(List<String> levels, List<String> cultivars, long grafts) {}

  /** How two factors hang together. */
  public enum TieKind {
    /** No comparison is possible: levels never met. */
    NEVER_TOGETHER,
    /** One factor says exactly what the other says. */
    SAME_THING,
    /** Few comparisons: most grafts of one level go with levels that hold little else. */
    MOSTLY_TOGETHER,
    /** One person, place or season holds most of the grafts of one level. */
    ONE_HOLDS_MOST,
    /** The factor changes only between batches, not within them. */
    BETWEEN_BATCHES
  }

  /**
   * A tie between two factors.
   *
   * @param kind how they hang together
   * @param factor one factor
   * @param other the other
   * @param efficiency share of the information about the worst level of {@code factor} left once
   *     {@code other} is allowed for, 0 to 1
   * @param refuses whether it makes comparisons of {@code factor} impossible that were asked for
   * @param sentence what that means, levels named
   */
  public record Tie(
      TieKind kind,
      String factor,
      String other,
      double efficiency,
      boolean refuses,
      String sentence) {}

  /**
   * Looks at which levels met.
   *
   * @param cells the records; every column of levels in them is looked at
   * @param compared the factor the question is about
   * @param options whether grafters are named
   * @return what can be compared, and the ties
   * @throws IllegalArgumentException if there is no such column
   */
  public static Entanglement of(Cells cells, String compared, AnswerOptions options) {
    return new WhoMetWhom(cells, options).entanglement(cells.factor(compared));
  }

  /**
   * Whether all levels can be compared with each other.
   *
   * @return true if there is one group of two levels or more
   */
  public boolean comparable() {
    return groups.size() == 1 && groups.get(0).levels().size() > 1;
  }

  /**
   * The level's group.
   *
   * @param level a level of the compared factor
   * @return the group, empty if the level has no grafts
   */
  public Optional<Group> groupOf(String level) {
    return groups.stream().filter(group -> group.levels().contains(level)).findFirst();
  }

  /**
   * Ties that concern the compared factor.
   *
   * @return least information first
   */
  public List<Tie> tiesOfCompared() {
    return ties.stream()
        .filter(tie -> tie.factor().equals(compared) || tie.other().equals(compared))
        .sorted(Comparator.comparingDouble(Tie::efficiency))
        .toList();
  }

  @Override
  public String title() {
    return "What was compared with what";
  }

  @Override
  public String headline() {
    String what = Words.column(compared);
    int levels = groups.stream().mapToInt(group -> group.levels().size()).sum();
    if (levels < 2) {
      return "These records hold only one level of %s: there is nothing to compare it with."
          .formatted(what);
    }
    if (comparable()) {
      return "All %d levels of %s can be compared: %s of the information about their differences is"
              .formatted(levels, what, Words.percent(efficiency))
          + " left once everything else recorded is allowed for (%s)."
              .formatted(Words.count(grafts, "graft"));
    }
    List<String> parts = new ArrayList<>();
    groups.forEach(group -> parts.add(Words.list(group.levels())));
    return "The levels of %s fall into %d groups that these records can't compare with each other: "
            .formatted(what, groups.size())
        + String.join("; ", parts)
        + ".";
  }

  @Override
  public String text() {
    List<String> lines = new ArrayList<>();
    lines.add(headline());
    if (comparable() && efficiency < WARN_BELOW) {
      lines.add(
          "That is little: the comparison rests on few cultivars, hands or seasons that had more"
              + " than one %s.".formatted(Words.column(compared)));
    }
    ties.forEach(tie -> lines.add(tie.sentence()));
    return String.join("\n", lines);
  }

  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "entanglement",
            "What hangs together in these records",
            AnswerColumn.FACTOR,
            AnswerColumn.COMPARED_WITHIN,
            AnswerColumn.EFFICIENCY,
            AnswerColumn.REFUSES,
            AnswerColumn.FINDING);
    for (Tie tie : ties) {
      table.row(tie.factor(), tie.other(), tie.efficiency(), tie.refuses(), tie.sentence());
    }
    return table.build();
  }
}
