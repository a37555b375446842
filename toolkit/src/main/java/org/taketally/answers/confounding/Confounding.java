package org.taketally.answers.confounding;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;

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
public record Confounding(
    String compared, List<Group> groups, double efficiency, List<Tie> ties, long grafts)
    implements Answer {

  /** Two levels with less than this share of the information left can't be compared. */
  public static final double ENTANGLED_BELOW = 0.10;

  /** Below this share of the information left, a comparison is worth a warning. */
  public static final double WARN_BELOW = 0.50;

  public Confounding {
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
   * @param detail the levels it is about
   */
  public record Tie(
      TieKind kind,
      String factor,
      String other,
      double efficiency,
      boolean refuses,
      TieDetail detail) {}

  /** The levels a tie is about; grafters by letter unless names were asked for. */
  public sealed interface TieDetail {}

  /** Each level of one factor went with its own level of the other. */
  public record EachItsOwn() implements TieDetail {}

  /**
   * Sets of levels that never shared a level of the other factor.
   *
   * @param sets names, two levels or more in each
   */
  public record SetsApart(List<List<String>> sets) implements TieDetail {
    public SetsApart {
      sets = sets.stream().map(List::copyOf).toList();
    }
  }

  /**
   * Levels each used where no other level was.
   *
   * @param levels those levels
   */
  public record LevelsAlone(List<LevelAlone> levels) implements TieDetail {
    public LevelsAlone {
      levels = List.copyOf(levels);
    }
  }

  /**
   * A level used where no other level was.
   *
   * @param level name
   * @param partners how many levels of the other factor it was used with, 1 or more
   * @param partner the one that holds most of its grafts
   */
  public record LevelAlone(String level, int partners, String partner) {}

  /**
   * A level most of whose grafts go with one level of the other factor, or make up most of it.
   *
   * @param level the worst such level
   * @param partner the level of the other factor that holds most of its grafts
   * @param shareOfLevel share of the grafts of {@code level} that are with {@code partner}, 0 to 1
   * @param shareOfPartner share of the grafts of {@code partner} that are of {@code level}, 0 to 1
   * @param more further levels the same holds for
   */
  public record HeldTogether(
      String level, String partner, double shareOfLevel, double shareOfPartner, int more)
      implements TieDetail {}

  /**
   * Batches that hold mostly, or only, one level each.
   *
   * @param batches how many there are
   * @param onlyOne whether no batch holds two levels
   */
  public record OneEach(int batches, boolean onlyOne) implements TieDetail {}

  @Override
  public Question question() {
    return Question.CONFOUNDING;
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
}
