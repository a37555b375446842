package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
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

  /** Compared within, as far as the records have them: losses come and go with them. */
  private static final List<String> STRATA =
      List.of(RecordColumn.SEASON.columnName(), RecordColumn.SITE.columnName());

  /** Share of the losses that must lie where two levels can be compared. */
  private static final double COMPARABLE = 0.5;

  private final List<CountedRow> rows;
  private final List<String> factors;
  private final List<String> strata;
  private final double dispersion;
  private final AnswerOptions options;
  private final CountingRounds rounds;
  private final FollowUps followUps;

  private LateLossCalculator(List<CountedRow> rows, List<String> factors, AnswerOptions options) {
    this.rows = rows;
    this.factors = factors;
    this.options = options;
    this.rounds = CountingRounds.of(rows);
    this.followUps = new FollowUps(rows, rounds);
    this.strata =
        STRATA.stream()
            .filter(column -> !factors.contains(column) && levels(rows, column).size() > 1)
            .toList();
    this.dispersion = dispersion();
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
    List<String> columns = Stream.concat(FACTORS.stream(), STRATA.stream()).toList();
    return of(CountedRow.of(records, assessments, columns), FACTORS, options);
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
        dispersion,
        options);
  }

  /**
   * How many times as much rows differ as single grafts would make them, within levels of the first
   * factor, season and site; 1 or more.
   */
  private double dispersion() {
    List<String> alike = Stream.concat(factors.stream().limit(1), strata.stream()).toList();
    Map<String, List<List<FollowUp>>> lots = new TreeMap<>();
    for (CountedRow row : complete(alike)) {
      lots.computeIfAbsent(stratum(row, alike), key -> new ArrayList<>()).add(followUps.of(row));
    }
    double squares = 0;
    double bySingleGrafts = 0;
    for (List<List<FollowUp>> lot : lots.values()) {
      RowLosses losses = RowLosses.of(lot);
      squares += losses.squares();
      bySingleGrafts += losses.bySingleGrafts();
    }
    return bySingleGrafts == 0 ? 1 : Math.max(1, squares / bySingleGrafts);
  }

  private LevelLoss level(String name, List<CountedRow> own, Optional<Estimate> timesAsFast) {
    long grafts = own.stream().mapToLong(CountedRow::grafts).sum();
    long early = own.stream().mapToLong(CountedRow::early).sum();
    long last = own.stream().mapToLong(CountedRow::last).sum();
    long once = own.stream().mapToLong(row -> row.aliveAt(0)).sum();
    SurvivalCurve curve =
        SurvivalCurve.ofRows(
            own.stream().filter(row -> row.aliveAt(0) > 0).map(followUps::of).toList(),
            options.coverage());
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
        own.stream().mapToLong(CountedRow::hiddenAtMost).sum(),
        lateLoss,
        curve,
        timesAsFast);
  }

  /** Grafts once alive, those alike taken together. */
  private List<FollowUp> alike(List<CountedRow> own) {
    Map<FollowUp, Long> alike = new HashMap<>();
    for (CountedRow row : own) {
      for (FollowUp graft : followUps.of(row)) {
        alike.merge(withGrafts(graft, 1), graft.grafts(), Long::sum);
      }
    }
    return alike.entrySet().stream()
        .map(entry -> withGrafts(entry.getKey(), entry.getValue()))
        .sorted(
            Comparator.comparingDouble(FollowUp::days)
                .thenComparing(FollowUp::lost)
                .thenComparing(FollowUp::from))
        .toList();
  }

  private static FollowUp withGrafts(FollowUp one, long grafts) {
    return new FollowUp(one.from(), one.days(), one.lost(), grafts);
  }

  private FactorLoss factor(String factor) {
    List<String> within =
        Stream.concat(strata.stream(), factors.stream())
            .filter(other -> !other.equals(factor))
            .toList();
    List<String> testedWithin = testedWithin(factor, within);
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
        factor,
        within,
        testedWithin,
        base,
        losses,
        test(factor, List.of()),
        test(factor, testedWithin));
  }

  /** As many as leave enough losses where two levels can be compared, the first first. */
  private List<String> testedWithin(String factor, List<String> within) {
    List<String> chosen = new ArrayList<>();
    double all = rows.stream().mapToLong(row -> row.aliveAt(0) - row.last()).sum();
    for (String column : within) {
      List<String> more = Stream.concat(chosen.stream(), Stream.of(column)).toList();
      if (comparableLosses(factor, more) >= COMPARABLE * all) {
        chosen.add(column);
      }
    }
    return chosen;
  }

  /** Losses in strata and rounds in which grafts of two levels were watched. */
  private long comparableLosses(String factor, List<String> within) {
    return RiskSet.of(watched(factor, within)).stream()
        .filter(set -> Arrays.stream(set.atRisk()).filter(n -> n > 0).count() > 1)
        .mapToLong(RiskSet::lostTotal)
        .sum();
  }

  private List<CountedRow> rowsOf(String factor, String level) {
    return rows.stream().filter(row -> level.equals(row.levels().get(factor))).toList();
  }

  private Optional<ChiSquare> test(String factor, List<String> within) {
    List<Watched> watched = watched(factor, within);
    long names = watched.stream().map(Watched::name).distinct().count();
    return names < 2
        ? Optional.empty()
        : LogRank.of(watched)
            .test()
            .map(t -> new ChiSquare(t.statistic() / dispersion, t.degreesOfFreedom()));
  }

  private List<Watched> watched(String factor, List<String> within) {
    Map<List<String>, List<CountedRow>> lots = new HashMap<>();
    for (CountedRow row : complete(with(factor, within))) {
      lots.computeIfAbsent(
              List.of(row.levels().get(factor), stratum(row, within)), key -> new ArrayList<>())
          .add(row);
    }
    return lots.entrySet().stream()
        .map(lot -> new Watched(lot.getKey().get(0), lot.getKey().get(1), alike(lot.getValue())))
        .sorted(Comparator.comparing(Watched::name).thenComparing(Watched::stratum))
        .toList();
  }

  private static List<String> with(String factor, List<String> others) {
    return Stream.concat(Stream.of(factor), others.stream()).toList();
  }

  /** Rows with a level of every column recorded. */
  private List<CountedRow> complete(List<String> columns) {
    return rows.stream().filter(row -> row.levels().keySet().containsAll(columns)).toList();
  }

  private static String stratum(CountedRow row, List<String> within) {
    return String.join(" | ", within.stream().map(row.levels()::get).toList());
  }

  /** Hazard ratios against the base level; none where they can't be told. */
  private Map<String, Estimate> timesAsFast(String factor, String base, List<String> within) {
    return new LossRatios(complete(with(factor, within)), followUps, options.coverage(), dispersion)
        .against(factor, base, within);
  }
}
