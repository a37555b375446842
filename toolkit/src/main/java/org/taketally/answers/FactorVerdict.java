package org.taketally.answers;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeFit;
import org.taketally.terms.Interval;

/**
 * Whether the levels of one factor (rootstock, stock condition, ...) take differently, and by how
 * much.
 *
 * @param factor column of the records
 * @param verdict one of five
 * @param reasons the reasoning, one sentence each, the headline first
 * @param levels each level's take, lowest first
 * @param size how large differences are; empty if they can't be estimated (the reasons say why)
 * @param tests evidence that there is any difference; empty if none could be made
 * @param detectable what these records could have shown; empty if it can't be worked out
 * @param entanglement what was compared with what
 * @param tally grafts and takes behind it
 * @param options margin and level used
 */
public record FactorVerdict(
    String factor,
    Verdict verdict,
    List<String> reasons,
    List<LevelTake> levels,
    Optional<Size> size,
    List<Test> tests,
    Optional<Detectable> detectable,
    Entanglement entanglement,
    TakeCount tally,
    AnswerOptions options)
    implements Answer {

  public FactorVerdict {
    reasons = List.copyOf(reasons);
    levels = List.copyOf(levels);
    tests = List.copyOf(tests);
    if (reasons.isEmpty()) {
      throw new IllegalArgumentException("a verdict on %s needs a reason".formatted(factor));
    }
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
   * @param chanceWithinMargin chance that the largest difference is below the margin, 0 to 1
   * @param pairs every pair of levels
   */
  public record Size(
      Estimate standardDeviation, Estimate largest, double chanceWithinMargin, List<Pair> pairs) {}

  /**
   * One pair of levels.
   *
   * @param level the level
   * @param other the level it is compared with
   * @param difference take of {@code level} minus take of {@code other}, -1 to 1; the range holds
   *     for all pairs at once
   * @param equivalence 90 % range of this difference alone, as two one-sided tests at 5 % use it
   * @param equivalent whether that range lies inside the margin on both sides
   * @param chanceBeyondMargin chance that the difference exceeds the margin either way, 0 to 1
   */
  public record Pair(
      String level,
      String other,
      Estimate difference,
      Interval equivalence,
      boolean equivalent,
      double chanceBeyondMargin) {}

  /**
   * A test of whether there is any difference.
   *
   * @param name what is tested, in words
   * @param method how
   * @param statistic twice the difference of log-likelihoods, 0 or more
   * @param degrees degrees of freedom
   * @param p how often chance alone gives as much, 0 to 1
   */
  public record Test(String name, String method, double statistic, double degrees, double p) {}

  /**
   * What the records could have shown.
   *
   * @param smallestDifference smallest difference between two levels that would have been seen in 8
   *     of 10 such sets of records, 0 to 1
   * @param equivalenceMargin smallest margin within which no difference could have been shown in 8
   *     of 10 such sets of records, 0 to 1
   * @param moreGrafts how many more grafts, spread as in the records, would settle it; empty if
   *     nothing is left to settle, or grafts alone can't
   * @param sentence the same in words
   */
  public record Detectable(
      double smallestDifference,
      double equivalenceMargin,
      OptionalLong moreGrafts,
      String sentence) {}

  /**
   * Works it out from a fit that has the factor.
   *
   * @param fit a fit in which the factor is adjusted for or varies
   * @param factor column of the records
   * @param options margin, level, draws, seed
   * @return the verdict
   */
  public static FactorVerdict of(TakeFit fit, String factor, AnswerOptions options) {
    return FactorVerdicts.of(new Averaging(fit, options), factor, options);
  }

  /**
   * The levels that make the factor matter.
   *
   * @return names, lowest take first; empty unless the verdict is {@code matters}
   */
  public List<String> standingOut() {
    return levels.stream().filter(LevelTake::standsOut).map(LevelTake::level).toList();
  }

  @Override
  public String title() {
    return "Does the %s matter?".formatted(Words.column(factor));
  }

  @Override
  public String headline() {
    return reasons.get(0);
  }

  @Override
  public String text() {
    return String.join("\n", reasons);
  }

  /** {@inheritDoc} Every pair of levels. */
  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            factor.replace('_', '-') + "-pairs",
            "Every pair of levels of " + Words.column(factor),
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.OTHER_LEVEL,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.EQUIVALENCE_LOW,
            AnswerColumn.EQUIVALENCE_HIGH,
            AnswerColumn.EQUIVALENT,
            AnswerColumn.CHANCE_BEYOND_MARGIN);
    for (Pair pair : size.map(Size::pairs).orElse(List.of())) {
      table.row(
          factor,
          pair.level(),
          pair.other(),
          pair.difference(),
          pair.equivalence(),
          pair.equivalent(),
          pair.chanceBeyondMargin());
    }
    return table.build();
  }

  /** {@inheritDoc} Pairs, levels, tests. */
  @Override
  public List<AnswerTable> tables() {
    return List.of(table(), levelTable(), testTable());
  }

  private AnswerTable levelTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            factor.replace('_', '-') + "-levels",
            "Levels of " + Words.column(factor) + ", lowest take first",
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.STANDS_OUT);
    for (LevelTake level : levels) {
      table.row(
          factor,
          level.level(),
          level.tally(),
          level.counted(),
          level.take().map(Estimate::value).orElse(null),
          level.take().map(Estimate::low).orElse(null),
          level.take().map(Estimate::high).orElse(null),
          level.standsOut());
    }
    return table.build();
  }

  private AnswerTable testTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            factor.replace('_', '-') + "-tests",
            "Evidence that " + Words.column(factor) + " makes any difference",
            AnswerColumn.FACTOR,
            AnswerColumn.CHECK,
            AnswerColumn.METHOD,
            AnswerColumn.STATISTIC,
            AnswerColumn.DEGREES,
            AnswerColumn.P_VALUE);
    for (Test test : tests) {
      table.row(factor, test.name(), test.method(), test.statistic(), test.degrees(), test.p());
    }
    return table.build();
  }
}
