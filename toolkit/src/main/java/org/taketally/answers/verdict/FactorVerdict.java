package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.TakeCount;
import org.taketally.terms.Interval;

/**
 * Whether the levels of one factor (rootstock, stock condition, ...) take differently, and by how
 * much.
 *
 * @param factor column of the records
 * @param verdict one of seven
 * @param levels each level's take, lowest first
 * @param size how large differences are; empty if they can't be estimated
 * @param tests evidence that there is any difference; empty if none could be made
 * @param detectable what these records could have shown; empty if it can't be worked out
 * @param confounding what was compared with what
 * @param notes what else went into it
 * @param tally grafts and takes behind it
 * @param options margin and level used
 */
public record FactorVerdict(
    String factor,
    Verdict verdict,
    List<LevelTake> levels,
    Optional<Size> size,
    List<Test> tests,
    Optional<Detectable> detectable,
    Confounding confounding,
    List<Note> notes,
    TakeCount tally,
    AnswerOptions options)
    implements Answer {

  public FactorVerdict {
    levels = List.copyOf(levels);
    tests = List.copyOf(tests);
    notes = List.copyOf(notes);
  }

  /**
   * One level.
   *
   * @param level name
   * @param tally its grafts and takes
   * @param counted Wilson interval of the counted take, 0 to 1
   * @param take adjusted take averaged over the mix of conditions in all records, 0 to 1; empty if
   *     it can't be estimated
   * @param standsOut whether this level is what makes the factor matter
   */
  public record LevelTake(
      String level,
      TakeCount tally,
      Interval counted,
      Optional<Estimate> take,
      boolean standsOut) {}

  /**
   * How large differences are, averaged over the mix of conditions in all records.
   *
   * @param standardDeviation spread of the levels, logits
   * @param largest largest difference between two levels, 0 to 1 (0.04 is 4 points)
   * @param probabilityWithinMargin chance that the largest difference is below the margin, 0 to 1
   * @param pairs every pair of levels
   */
  public record Size(
      Estimate standardDeviation,
      Estimate largest,
      double probabilityWithinMargin,
      List<Pair> pairs) {}

  /**
   * One pair of levels.
   *
   * @param level the level
   * @param other the level it is compared with
   * @param difference take of {@code level} minus take of {@code other}, -1 to 1; its range of
   *     {@link VerdictRules#AT_ONCE} holds for all pairs at once, and for whatever became of
   *     unassessed grafts
   * @param veryLikely the same range at {@link VerdictRules#BEYOND}, by which a difference counts
   *     as beyond the margin
   * @param equivalence range of this difference alone, as two one-sided tests use it, {@link
   *     VerdictRules#ALONE}
   * @param equivalent whether that range lies inside the margin on both sides
   * @param probabilityBeyondMargin chance that the difference exceeds the margin either way, 0 to 1
   */
  public record Pair(
      String level,
      String other,
      Estimate difference,
      Interval veryLikely,
      Interval equivalence,
      boolean equivalent,
      double probabilityBeyondMargin) {

    /**
     * Whether the whole very likely range for all pairs at once lies beyond the margin, {@code
     * level} the higher.
     *
     * @param margin 0 to 1
     * @return whether they very likely lie further apart
     */
    public boolean beyond(double margin) {
      return veryLikely.low() > margin;
    }

    /**
     * Whether the whole likely range for all pairs at once lies within the margin.
     *
     * @param margin 0 to 1
     * @return whether they very likely lie less far apart
     */
    public boolean within(double margin) {
      return -margin < difference.low() && difference.high() < margin;
    }

    /**
     * The difference with the range that decides what is said of this pair: the one by which it is
     * equivalent, the one by which it lies beyond the margin, else the one for all pairs at once.
     *
     * @param margin 0 to 1
     * @return the one range to print with it
     */
    public Estimate deciding(double margin) {
      Interval range = difference.interval();
      if (equivalent) {
        range = equivalence;
      } else if (beyond(margin) || veryLikely.high() < -margin) {
        range = veryLikely;
      }
      return new Estimate(difference.value(), range);
    }

    private Optional<Pair> between(String first, String second) {
      if (level.equals(first) && other.equals(second)) {
        return Optional.of(this);
      }
      return level.equals(second) && other.equals(first) ? Optional.of(turned()) : Optional.empty();
    }

    /**
     * The same pair seen from the other side.
     *
     * @return take of {@code other} minus take of {@code level}
     */
    public Pair turned() {
      Estimate opposite = new Estimate(-difference.value(), opposite(difference.interval()));
      return new Pair(
          /* level= */ other,
          /* other= */ level,
          opposite,
          opposite(veryLikely),
          opposite(equivalence),
          equivalent,
          probabilityBeyondMargin);
    }

    private static Interval opposite(Interval range) {
      return new Interval(-range.high(), -range.low(), range.coverage());
    }
  }

  /** What a test asks. */
  public enum TestQuestion {
    /** Whether any two levels differ. */
    ANY_DIFFERENCE
  }

  /** How a test was made. */
  public enum TestMethod {
    /** The most extreme pair of all, by draws of the fit; the verdict's own. */
    ALL_PAIRS_AT_ONCE,
    /** Levels dealt out anew among grafts made together. */
    DEALT_WITHIN_GROUPS,
    /** F with the degrees of freedom of the groups between which levels change. */
    F_BY_GROUPS
  }

  /**
   * A test of whether there is any difference.
   *
   * @param question what is tested
   * @param method how
   * @param simulated how many sets of records were simulated for it; 0 if none
   * @param statistic of the method, 0 or more
   * @param degrees degrees of freedom
   * @param pValue how often chance alone gives as much, 0 to 1
   */
  public record Test(
      TestQuestion question,
      TestMethod method,
      int simulated,
      double statistic,
      double degrees,
      double pValue) {}

  /** What else went into a verdict. */
  public sealed interface Note {}

  /**
   * Levels these records can't compare with the others.
   *
   * @param levels left out
   */
  public record LevelsLeftOut(List<String> levels) implements Note {
    public LevelsLeftOut {
      levels = List.copyOf(levels);
    }
  }

  /**
   * A batch column added to the model because the compared column changed mostly between batches.
   *
   * @param column e.g. {@code grafting_day}
   */
  public record BatchAdded(String column) implements Note {}

  /**
   * None or all grafts took, so the verdict rests on counts alone.
   *
   * @param allTook whether all took; none otherwise
   */
  public record CountsAlone(boolean allTook) implements Note {}

  /**
   * Levels of which none or all took, so that no difference was judged by counts alone.
   *
   * @param levels names
   */
  public record NoneOrAllTook(List<String> levels) implements Note {
    public NoneOrAllTook {
      levels = List.copyOf(levels);
    }
  }

  /**
   * Columns within whose groups levels were compared, as they were spread unevenly over them.
   *
   * @param columns names
   */
  public record ComparedWithin(List<String> columns) implements Note {
    public ComparedWithin {
      columns = List.copyOf(columns);
    }
  }

  /**
   * Levels do differently from season to season; the verdict is on an average season.
   *
   * @param spread standard deviation of a level's part in a season, logits
   * @param nextWithinMargin chance that in a season not recorded all levels lie within the margin
   *     of each other, 0 to 1
   */
  public record AverageSeason(Estimate spread, double nextWithinMargin) implements Note {}

  /**
   * Ranges allow for whatever became of unassessed grafts.
   *
   * @param moved largest move of a difference between all failed and all taken, 0 to 1
   */
  public record Unassessed(double moved) implements Note {}

  /**
   * The largest set of levels that make no practical difference among themselves, where not all do.
   *
   * @param levels names
   */
  public record EquivalentLevels(List<String> levels) implements Note {
    public EquivalentLevels {
      levels = List.copyOf(levels);
    }
  }

  /**
   * Two levels of which one takes more by the margin on one cultivar and less on another.
   *
   * @param level a level
   * @param other another
   * @param more cultivar on which {@code level} takes more
   * @param less cultivar on which {@code level} takes less
   */
  public record CultivarSwap(String level, String other, String more, String less)
      implements Note {}

  /**
   * Single cultivars may differ beyond the margin both ways; it isn't shown.
   *
   * @param probability that some do, 0 to 1
   */
  public record CultivarsMayDiffer(double probability) implements Note {}

  /**
   * A second opinion: levels dealt out anew among grafts alike in some columns.
   *
   * @param columns names
   * @param grafts that could be dealt
   * @param pValue how often dealing gives as much as is seen, 0 to 1
   */
  public record DealtWithin(List<String> columns, long grafts, double pValue) implements Note {
    public DealtWithin {
      columns = List.copyOf(columns);
    }
  }

  /**
   * Levels change between groups only (each bed has one stock), so the groups are what counts.
   *
   * @param groups column of the groups, e.g. {@code block}
   * @param count groups
   * @param pValue how often groups that owe nothing to the levels would differ as much, 0 to 1
   */
  public record BetweenGroupsOnly(String groups, int count, double pValue) implements Note {}

  /**
   * What the verdict would have been, had columns that vary (days, hands) been believed to differ
   * less or more before the records were seen.
   *
   * @param tried scale of the prior, logits, and the verdict with it
   */
  public record PriorsTried(SortedMap<Double, Verdict> tried) implements Note {
    public PriorsTried {
      tried = Collections.unmodifiableSortedMap(new TreeMap<>(tried));
    }
  }

  /**
   * What the records could have shown.
   *
   * @param smallestDifference smallest difference between two levels that would have been seen in 8
   *     of 10 such sets of records, 0 to 1
   * @param equivalenceMargin smallest margin within which no difference could have been shown in 8
   *     of 10 such sets of records, 0 to 1
   * @param moreGrafts how many more grafts, spread as in the records, would settle it; empty if
   *     nothing is left to settle, or grafts alone can't
   */
  public record Detectable(
      double smallestDifference, double equivalenceMargin, OptionalLong moreGrafts) {}

  /**
   * One pair of levels, its difference turned to {@code level} minus {@code other}.
   *
   * @param level a level
   * @param other another
   * @return the pair; empty if it wasn't compared
   */
  public Optional<Pair> pair(String level, String other) {
    return size.stream()
        .flatMap(found -> found.pairs().stream())
        .flatMap(pair -> pair.between(level, other).stream())
        .findFirst();
  }

  /**
   * The pair the verdict is told by: the widest gap beyond the margin if it matters, the widest
   * shown at all if they differ, else the widest as estimated.
   *
   * @return the pair; empty if none was estimated
   */
  public Optional<Pair> telling() {
    List<Pair> pairs = size.map(Size::pairs).orElse(List.of());
    Predicate<Pair> shown =
        switch (verdict) {
          case MATTERS -> pair -> pair.beyond(options.margin());
          case DIFFERS_UNSETTLED, DEPENDS_ON_CULTIVAR -> pair -> pair.difference().low() > 0;
          default -> pair -> true;
        };
    return pairs.stream().filter(shown).findFirst().or(() -> pairs.stream().findFirst());
  }

  /**
   * How far apart any two levels may lie, by the ranges that decide.
   *
   * @return the end furthest from zero of any pair's range, 0 to 1; 0 without pairs
   */
  public double atMost() {
    return size.map(Size::pairs).orElse(List.of()).stream()
        .map(pair -> pair.deciding(options.margin()))
        .mapToDouble(gap -> Math.max(Math.abs(gap.low()), Math.abs(gap.high())))
        .max()
        .orElse(0);
  }

  /**
   * The levels that make the factor matter.
   *
   * @return names, lowest take first; empty unless the verdict is {@code matters}
   */
  public List<String> standingOut() {
    return levels.stream().filter(LevelTake::standsOut).map(LevelTake::level).toList();
  }

  /**
   * Levels named as making no practical difference among themselves: all of them, or the largest
   * set shown.
   *
   * @return names; empty if none were shown
   */
  public List<String> equivalentLevels() {
    boolean all =
        size.filter(s -> s.pairs().stream().allMatch(Pair::equivalent))
            .filter(s -> !s.pairs().isEmpty())
            .isPresent();
    if (all) {
      return levels.stream().map(LevelTake::level).toList();
    }
    return notes.stream()
        .filter(EquivalentLevels.class::isInstance)
        .flatMap(note -> ((EquivalentLevels) note).levels().stream())
        .toList();
  }

  FactorVerdict with(Note note) {
    List<Note> more = new ArrayList<>(notes);
    more.add(note);
    return new FactorVerdict(
        factor, verdict, levels, size, tests, detectable, confounding, more, tally, options);
  }

  @Override
  public Question question() {
    return Question.DOES_IT_MATTER;
  }
}
