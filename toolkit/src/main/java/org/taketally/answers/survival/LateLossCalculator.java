package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.ChiSquare;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Interval;

/** Works {@link LateLoss} out. */
public final class LateLossCalculator {

  /** Compared by default, as far as the records have them. */
  public static final List<String> FACTORS =
      List.of(
          RecordColumn.ROOTSTOCK.columnName(),
          RecordColumn.STOCK_CONDITION.columnName(),
          RecordColumn.CULTIVAR.columnName());

  private final List<CountedRow> rows;
  private final List<String> factors;
  private final AnswerOptions options;
  private final CountingRounds rounds;

  private LateLossCalculator(List<CountedRow> rows, List<String> factors, AnswerOptions options) {
    this.rows = rows;
    this.factors = factors;
    this.options = options;
    this.rounds = CountingRounds.of(rows);
  }

  /**
   * Early take, final take and late loss of records, by {@link #FACTORS}.
   *
   * @param records the records
   * @param assessments repeated counts that belong to them
   * @param options level used
   * @return the answer; empty if no row that had a living graft was counted more than once
   */
  public static Optional<LateLoss> of(
      GraftRecords records, Assessments assessments, AnswerOptions options) {
    return of(CountedRow.of(records, assessments, FACTORS), FACTORS, options);
  }

  /**
   * Early take, final take and late loss.
   *
   * @param rows rows and their counts
   * @param factors columns to compare by, e.g. {@code rootstock}, {@code cultivar}; each is
   *     compared within the others
   * @param options level used
   * @return the answer; empty if no row that had a living graft was counted more than once
   */
  public static Optional<LateLoss> of(
      List<CountedRow> rows, List<String> factors, AnswerOptions options) {
    List<CountedRow> followed = rows.stream().filter(CountedRow::isFollowed).toList();
    if (followed.stream().allMatch(row -> row.aliveAt(0) == 0)) {
      return Optional.empty();
    }
    List<String> compared =
        factors.stream().distinct().filter(factor -> levels(followed, factor).size() > 1).toList();
    long once = rows.stream().filter(row -> !row.isFollowed()).mapToLong(CountedRow::grafts).sum();
    return Optional.of(new LateLossCalculator(followed, compared, options).answer(once));
  }

  /** Levels that had a living graft, in natural order. */
  private static List<String> levels(List<CountedRow> rows, String factor) {
    TreeSet<String> levels = new TreeSet<>();
    rows.stream()
        .filter(row -> row.levels().containsKey(factor) && row.aliveAt(0) > 0)
        .forEach(row -> levels.add(row.levels().get(factor)));
    return List.copyOf(levels);
  }

  private LateLoss answer(long countedOnce) {
    return new LateLoss(
        level("", rows, Optional.empty()),
        factors.stream().map(this::factor).toList(),
        rounds.rounds(),
        rounds.areApart(),
        rows.stream().mapToLong(row -> row.counts().get(0).day()).min().orElseThrow(),
        rows.stream().mapToLong(row -> row.counts().get(0).day()).max().orElseThrow(),
        countedOnce,
        options);
  }

  private LevelLoss level(String name, List<CountedRow> own, Optional<Estimate> timesAsFast) {
    long grafts = own.stream().mapToLong(CountedRow::grafts).sum();
    long early = own.stream().mapToLong(CountedRow::early).sum();
    long last = own.stream().mapToLong(CountedRow::last).sum();
    long once = own.stream().mapToLong(row -> row.aliveAt(0)).sum();
    SurvivalCurve curve = SurvivalCurve.of(followUps(own), options.coverage());
    SurvivalCurve.Step end = curve.at(curve.lastDay());
    Interval alive = end.interval();
    Estimate lateLoss =
        new Estimate(
            1 - end.alive(), new Interval(1 - alive.high(), 1 - alive.low(), alive.coverage()));
    return new LevelLoss(
        name,
        new TakeCount(early, grafts),
        new TakeCount(last, grafts),
        once - early,
        once - last,
        lateLoss,
        curve,
        timesAsFast);
  }

  /** Grafts once alive, those alike taken together. */
  private List<FollowUp> followUps(List<CountedRow> own) {
    Map<FollowUp, Long> alike = new HashMap<>();
    for (CountedRow row : own) {
      for (FollowUp graft : rounds.followUps(row)) {
        alike.merge(new FollowUp(graft.days(), graft.lost(), 1), graft.grafts(), Long::sum);
      }
    }
    return alike.entrySet().stream()
        .map(entry -> new FollowUp(entry.getKey().days(), entry.getKey().lost(), entry.getValue()))
        .sorted(Comparator.comparingDouble(FollowUp::days).thenComparing(FollowUp::lost))
        .toList();
  }

  private FactorLoss factor(String factor) {
    List<String> within = factors.stream().filter(other -> !other.equals(factor)).toList();
    List<String> levels = levels(rows, factor);
    String base =
        levels.stream()
            .max(
                Comparator.comparingLong(
                        (String level) ->
                            rowsOf(factor, level).stream().mapToLong(row -> row.aliveAt(0)).sum())
                    .thenComparing(Comparator.reverseOrder()))
            .orElseThrow();
    Map<String, Estimate> times = timesAsFast(factor, base, within);
    List<LevelLoss> losses =
        levels.stream()
            .map(
                level -> level(level, rowsOf(factor, level), Optional.ofNullable(times.get(level))))
            .sorted(
                Comparator.comparingDouble((LevelLoss level) -> level.lateLoss().value())
                    .reversed()
                    .thenComparing(LevelLoss::name))
            .toList();
    return new FactorLoss(
        factor, within, base, losses, test(factor, List.of()), test(factor, within));
  }

  private List<CountedRow> rowsOf(String factor, String level) {
    return rows.stream().filter(row -> level.equals(row.levels().get(factor))).toList();
  }

  private Optional<ChiSquare> test(String factor, List<String> within) {
    Map<List<String>, List<CountedRow>> lots = new HashMap<>();
    for (CountedRow row : complete(factor, within)) {
      lots.computeIfAbsent(
              List.of(row.levels().get(factor), stratum(row, within)), key -> new ArrayList<>())
          .add(row);
    }
    List<Watched> watched =
        lots.entrySet().stream()
            .map(
                lot ->
                    new Watched(
                        lot.getKey().get(0), lot.getKey().get(1), followUps(lot.getValue())))
            .sorted(Comparator.comparing(Watched::name).thenComparing(Watched::stratum))
            .toList();
    long names = watched.stream().map(Watched::name).distinct().count();
    return names < 2 ? Optional.empty() : LogRank.of(watched).test();
  }

  /** Rows with every level recorded. */
  private List<CountedRow> complete(String factor, List<String> within) {
    return rows.stream()
        .filter(
            row -> row.levels().containsKey(factor) && row.levels().keySet().containsAll(within))
        .toList();
  }

  private static String stratum(CountedRow row, List<String> within) {
    return String.join(" | ", within.stream().map(row.levels()::get).toList());
  }

  /** Hazard ratios against the base level; none where they can't be told. */
  private Map<String, Estimate> timesAsFast(String factor, String base, List<String> within) {
    return new LossRatios(complete(factor, within), rounds, options.coverage())
        .against(factor, base, within);
  }
}
