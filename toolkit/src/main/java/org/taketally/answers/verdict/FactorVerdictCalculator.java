package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.CountedTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.cells.Cells;
import org.taketally.model.BetweenGroups;
import org.taketally.model.LevelTest;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.UnpooledLevels;
import org.taketally.model.VaryingFactor;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Logit;

/** Works out a {@link FactorVerdict}: what can be compared, the evidence, and the rules. */
public final class FactorVerdictCalculator {

  /** Share of the grafts the comparable levels must hold for a verdict on them alone. */
  private static final double MOST = 0.80;

  /** Above this F by groups and the normal hardly differ. */
  private static final int FEW_GROUPS = 30;

  /** Grafts alike in these are dealt out anew among themselves, the first the most important. */
  private static final List<String> DEALT_WITHIN =
      List.of(
          DerivedColumn.GRAFTING_DAY.columnName(),
          RecordColumn.BLOCK.columnName(),
          RecordColumn.SEASON.columnName(),
          RecordColumn.SITE.columnName(),
          RecordColumn.GRAFTER.columnName(),
          RecordColumn.CULTIVAR.columnName());

  private static final long MOST_DEALT = 50_000;

  /** Keys of what levels do in a season not recorded. */
  private static final long NEXT_SEASON = 1_000_003;

  /** How many times the draws are taken where they leave the verdict open, and how many at most. */
  private static final int MORE = 4;

  private static final int MOST_DRAWS = 32_000;

  private final String factor;
  private final AnswerOptions options;
  private final Confounding confounding;
  private final TakeCount tally;
  private final List<FactorVerdict.Note> notes = new ArrayList<>();
  private Optional<MarginalTakes> free = Optional.empty();
  private Optional<CultivarSwaps> swaps = Optional.empty();

  private FactorVerdictCalculator(Cells cells, String factor, AnswerOptions options) {
    this.factor = factor;
    this.options = options;
    this.confounding = ComparableFit.confounding(cells, factor, options);
    this.tally = TakeCounter.all(cells);
  }

  /**
   * Works it out from a fit that has the factor.
   *
   * @param fit a fit in which the factor is adjusted for or varies
   * @param factor column of the records
   * @param options margin, level, draws, seed
   * @return the verdict
   */
  public static FactorVerdict of(TakeFit fit, String factor, AnswerOptions options) {
    return of(MarginalTakes.of(fit, options), factor, options);
  }

  /**
   * The verdict on a column.
   *
   * @param main draws of the main fit, which has the column
   * @param factor the column
   * @param options margin, level, seed
   * @return the verdict
   */
  public static FactorVerdict of(MarginalTakes main, String factor, AnswerOptions options) {
    return judged(main, factor, options).verdict();
  }

  /**
   * A verdict, and what it took to get it.
   *
   * @param verdict the verdict
   * @param free draws with the levels left free; empty where the verdict needed none
   * @param swaps swaps of single cultivars; empty where none were looked at
   */
  record Judged(
      FactorVerdict verdict, Optional<MarginalTakes> free, Optional<CultivarSwaps> swaps) {}

  /** The same, with what it took. */
  static Judged judged(MarginalTakes main, String factor, AnswerOptions options) {
    main.requireKnown(factor);
    FactorVerdictCalculator verdicts =
        new FactorVerdictCalculator(main.fit().cells(), factor, options);
    FactorVerdict verdict =
        verdicts.comparable().isEmpty()
            ? verdicts.entangled(main.fit().cells())
            : verdicts.verdict(verdicts.prepared(main));
    return new Judged(verdict, verdicts.free, verdicts.swaps);
  }

  /** The verdict by counts alone, for records of which none or all took. */
  static FactorVerdict byCounts(Cells cells, String factor, AnswerOptions options) {
    FactorVerdictCalculator verdicts = new FactorVerdictCalculator(cells, factor, options);
    if (verdicts.comparable().isEmpty()) {
      return verdicts.entangled(cells);
    }
    verdicts.notes.add(new FactorVerdict.CountsAlone(cells.takesTotal() > 0));
    List<String> levels = verdicts.comparable();
    TakeCount[] counts = TakeCounter.byLevel(cells, factor, levels);
    return verdicts.verdict(cells, FactorEvidence.byCounts(levels, counts, options));
  }

  /** The verdict where the column couldn't be kept in the model: what hangs together with what. */
  public static FactorVerdict refused(Cells cells, String factor, AnswerOptions options) {
    return new FactorVerdictCalculator(cells, factor, options).entangled(cells);
  }

  /** Levels the verdict is about: the largest comparable group if it holds most grafts. */
  private List<String> comparable() {
    Confounding.Group largest = confounding.groups().get(0);
    boolean enough = largest.levels().size() > 1 && largest.grafts() >= MOST * tally.grafts();
    return enough ? largest.levels() : List.of();
  }

  /** The main fit on the comparable levels, batches allowed for if levels changed between them. */
  private MarginalTakes prepared(MarginalTakes main) {
    List<String> kept = comparable();
    if (confounding.groups().size() > 1) {
      noteLeftOut(kept);
    }
    ComparableFit comparable = ComparableFit.of(main, confounding, kept, options);
    comparable.batchesAdded().forEach(batch -> notes.add(new FactorVerdict.BatchAdded(batch)));
    return comparable.main();
  }

  private void noteLeftOut(List<String> kept) {
    List<String> out =
        confounding.groups().stream()
            .flatMap(group -> group.levels().stream())
            .filter(level -> !kept.contains(level))
            .toList();
    notes.add(new FactorVerdict.LevelsLeftOut(out));
  }

  private FactorVerdict entangled(Cells cells) {
    List<String> levels =
        confounding.groups().stream().flatMap(group -> group.levels().stream()).toList();
    List<FactorVerdict.LevelTake> counted = new ArrayList<>();
    for (String level : levels) {
      counted.add(levelTake(level, TakeCounter.byLevel(cells, factor, List.of(level))[0]));
    }
    return new FactorVerdict(
        factor,
        Verdict.ENTANGLED,
        counted,
        Optional.empty(),
        List.of(),
        Optional.empty(),
        confounding,
        notes,
        tally,
        options);
  }

  private FactorVerdict.LevelTake levelTake(String level, TakeCount count) {
    return new FactorVerdict.LevelTake(
        level,
        count,
        TakeRateInterval.wilson(count.takes(), count.grafts(), options.coverage()),
        Optional.empty(),
        false);
  }

  private FactorVerdict verdict(MarginalTakes main) {
    FactorEvidence evidence = decided(main);
    free = evidence.free();
    if (!evidence.bounded().isEmpty()) {
      notes.add(new FactorVerdict.NoneOrAllTook(evidence.bounded()));
    }
    List<String> within = main.fit().model().within();
    if (main.fit().model().compared().filter(factor::equals).isPresent() && !within.isEmpty()) {
      notes.add(new FactorVerdict.ComparedWithin(within));
    }
    if (factor.equals(RecordColumn.ROOTSTOCK.columnName())
        && LevelSubstitution.varies(main.fit(), SuggestedModel.STOCK_BY_SEASON)) {
      notes.add(
          new FactorVerdict.AverageSeason(
              seasonSpread(main), nextWithinMargin(evidence.free().orElse(main), evidence)));
    }
    return verdict(main.fit().cells(), evidence);
  }

  /** More draws where other draws could decide otherwise, as many as can be kept. */
  private FactorEvidence decided(MarginalTakes main) {
    FactorEvidence evidence = FactorEvidence.of(main, factor, options);
    int draws = evidence.takes().length;
    while (undecided(main, evidence) && MORE * draws <= main.most(MOST_DRAWS)) {
      draws *= MORE;
      evidence = evidence.withDraws(draws, main, factor, options);
    }
    return evidence;
  }

  private boolean undecided(MarginalTakes main, FactorEvidence evidence) {
    PairDifferences differences = new PairDifferences(evidence.levels(), evidence.takes());
    UnassessedBounds bounds = bounds(main.fit().cells(), evidence);
    return differences.undecided(
        differences.pairs(options.margin(), evidence.takes(), bounds), options.margin());
  }

  /** Standard deviation of what one level does in one season beside what it does in all, logits. */
  private Estimate seasonSpread(MarginalTakes main) {
    int k =
        main.fit().varying().stream()
            .map(VaryingFactor::factor)
            .toList()
            .indexOf(SuggestedModel.STOCK_BY_SEASON);
    return DrawSummary.median(
        IntStream.range(0, main.count()).mapToDouble(d -> main.draws().sds(d)[k]).toArray(),
        options.coverage());
  }

  /** What each level does in a season of its own is drawn anew, season by season unlike others. */
  private double nextWithinMargin(MarginalTakes free, FactorEvidence evidence) {
    TakeDraws.Column seasons = free.draws().column(SuggestedModel.STOCK_BY_SEASON);
    double[][] next = new double[free.count()][];
    for (int d = 0; d < next.length; d++) {
      next[d] = evidence.takes()[d].clone();
      for (int level = 0; level < next[d].length; level++) {
        double own = seasons.in(d).ofUnseen(NEXT_SEASON + level);
        next[d][level] = Logit.take(Logit.of(next[d][level]) + own);
      }
    }
    return DrawSummary.probability(PairDifferences.largest(next), gap -> gap < options.margin());
  }

  private FactorVerdict verdict(Cells cells, FactorEvidence evidence) {
    TakeCount[] counts = TakeCounter.byLevel(cells, factor, evidence.levels());
    long[] grafts = Arrays.stream(counts).mapToLong(TakeCount::grafts).toArray();
    PairDifferences differences = new PairDifferences(evidence.levels(), evidence.takes());
    double[][] judged =
        evidence.bounded().isEmpty() ? evidence.takes() : CountedTakes.draws(counts, options);
    UnassessedBounds bounds = UnassessedBounds.of(cells, factor, evidence.levels(), grafts);
    List<FactorVerdict.Pair> pairs = differences.pairs(options.margin(), judged, bounds);
    noteUnassessed(bounds, evidence);
    swaps = evidence.free().flatMap(f -> CultivarSwaps.of(f, factor, options));
    Verdict verdict = word(pairs, differences.anyDiffer(bounds), swaps);
    swaps.ifPresent(s -> notes.addAll(s.notes()));
    noteEquivalent(evidence.levels(), grafts, pairs);
    List<FactorVerdict.Test> tests = tests(cells, differences);
    evidence.free().flatMap(this::byGroups).ifPresent(tests::add);
    double[] largest = PairDifferences.largest(evidence.takes());
    FactorVerdict.Size size =
        new FactorVerdict.Size(
            evidence.standardDeviation(),
            pairs.get(0).difference(),
            DrawSummary.probability(largest, x -> x < options.margin()),
            pairs);
    return new FactorVerdict(
        factor,
        verdict,
        levelTakes(
            evidence, counts, verdict == Verdict.MATTERS ? named(pairs, evidence) : Set.of()),
        Optional.of(size),
        tests,
        Optional.of(
            new DetectableCalculator(differences, options)
                .detectable(verdict, cells.graftsTotal())),
        confounding,
        notes,
        TakeCounter.all(cells),
        options);
  }

  private Verdict word(
      List<FactorVerdict.Pair> pairs, boolean differ, Optional<CultivarSwaps> shown) {
    return VerdictRules.verdict(
        new VerdictRules.Evidence(
            pairs.stream().allMatch(FactorVerdict.Pair::equivalent),
            differ,
            pairs.stream().anyMatch(p -> p.beyond(options.margin())),
            shown.filter(CultivarSwaps::shown).isPresent()));
  }

  /**
   * The verdict alone, on all levels of a fit, without what explains it.
   *
   * @param free draws of a fit that has the column, its levels left free, none of which all or none
   *     took
   * @param known what was judged already; what its swaps gave isn't worked out again
   * @param options margin, level, seed
   */
  static Verdict wordOf(MarginalTakes free, Judged known, AnswerOptions options) {
    String factor = known.verdict().factor();
    FactorVerdictCalculator verdicts =
        new FactorVerdictCalculator(free.fit().cells(), factor, options);
    FactorEvidence evidence = verdicts.decided(free);
    PairDifferences differences = new PairDifferences(evidence.levels(), evidence.takes());
    UnassessedBounds bounds = verdicts.bounds(free.fit().cells(), evidence);
    return verdicts.word(
        differences.pairs(options.margin(), evidence.takes(), bounds),
        differences.anyDiffer(bounds),
        evidence.free().flatMap(f -> known.swaps().flatMap(s -> s.in(f, factor, options))));
  }

  private UnassessedBounds bounds(Cells cells, FactorEvidence evidence) {
    TakeCount[] counts = TakeCounter.byLevel(cells, factor, evidence.levels());
    long[] grafts = Arrays.stream(counts).mapToLong(TakeCount::grafts).toArray();
    return UnassessedBounds.of(cells, factor, evidence.levels(), grafts);
  }

  private void noteUnassessed(UnassessedBounds bounds, FactorEvidence evidence) {
    double moved = bounds.largest(PairDifferences.means(evidence.takes()));
    if (moved > 0) {
      notes.add(new FactorVerdict.Unassessed(moved));
    }
  }

  /** The largest set of levels shown equivalent at once, where the whole set isn't. */
  private void noteEquivalent(List<String> levels, long[] grafts, List<FactorVerdict.Pair> pairs) {
    if (pairs.stream().allMatch(FactorVerdict.Pair::equivalent)) {
      return;
    }
    boolean[][] equivalent = new boolean[grafts.length][grafts.length];
    for (FactorVerdict.Pair pair : pairs) {
      int a = levels.indexOf(pair.level());
      int b = levels.indexOf(pair.other());
      equivalent[a][b] = pair.within(options.margin());
      equivalent[b][a] = equivalent[a][b];
    }
    int[] set = EquivalentSet.largest(equivalent, grafts);
    if (set.length > 0) {
      notes.add(
          new FactorVerdict.EquivalentLevels(Arrays.stream(set).mapToObj(levels::get).toList()));
    }
  }

  /** All pairs at once from the fit, and dealing out within groups as a second opinion. */
  private List<FactorVerdict.Test> tests(Cells cells, PairDifferences differences) {
    List<FactorVerdict.Test> tests = new ArrayList<>();
    double statistic = differences.largestInErrors();
    tests.add(
        new FactorVerdict.Test(
            FactorVerdict.TestQuestion.ANY_DIFFERENCE,
            FactorVerdict.TestMethod.ALL_PAIRS_AT_ONCE,
            differences.draws(),
            statistic,
            differences.standardErrors().length,
            differences.pValueOf(statistic)));
    List<String> groups =
        DEALT_WITHIN.stream().filter(name -> cells.findFactor(name).isPresent()).toList();
    if (!groups.isEmpty() && cells.graftsTotal() <= MOST_DEALT) {
      PermutationTest.of(cells, factor, groups, options.seed())
          .ifPresent(
              dealt -> {
                tests.add(
                    new FactorVerdict.Test(
                        FactorVerdict.TestQuestion.ANY_DIFFERENCE,
                        FactorVerdict.TestMethod.DEALT_WITHIN_GROUPS,
                        dealt.deals(),
                        dealt.statistic(),
                        1,
                        dealt.pValue()));
                notes.add(
                    new FactorVerdict.DealtWithin(dealt.within(), dealt.grafts(), dealt.pValue()));
              });
    }
    return tests;
  }

  /** F by groups, where levels change between groups only. */
  private Optional<FactorVerdict.Test> byGroups(MarginalTakes free) {
    Optional<BetweenGroups> groups =
        free.fit().changesBetween(factor).filter(between -> between.degrees() <= FEW_GROUPS);
    Optional<LevelTest> any =
        groups.isEmpty()
            ? Optional.empty()
            : UnpooledLevels.of(free.fit(), factor).map(UnpooledLevels::anyDifference);
    if (any.isEmpty()) {
      return Optional.empty();
    }
    LevelTest test = any.get().between(groups.get());
    notes.add(
        new FactorVerdict.BetweenGroupsOnly(
            groups.get().groups(), groups.get().count(), test.pValue()));
    return Optional.of(
        new FactorVerdict.Test(
            FactorVerdict.TestQuestion.ANY_DIFFERENCE,
            FactorVerdict.TestMethod.F_BY_GROUPS,
            0,
            test.chiSquare() / test.degrees(),
            groups.get().degrees(),
            test.pValue()));
  }

  /** Levels that account for every pair shown to lie beyond the margin. */
  private Set<String> named(List<FactorVerdict.Pair> pairs, FactorEvidence evidence) {
    List<String> levels = evidence.levels();
    boolean[][] above = new boolean[levels.size()][levels.size()];
    for (FactorVerdict.Pair pair : pairs) {
      above[levels.indexOf(pair.level())][levels.indexOf(pair.other())] =
          pair.beyond(options.margin());
    }
    return NamedLevels.of(above).stream().map(levels::get).collect(Collectors.toSet());
  }

  private List<FactorVerdict.LevelTake> levelTakes(
      FactorEvidence evidence, TakeCount[] counts, Set<String> named) {
    return IntStream.range(0, counts.length)
        .mapToObj(
            l ->
                new FactorVerdict.LevelTake(
                    evidence.levels().get(l),
                    counts[l],
                    TakeRateInterval.wilson(
                        counts[l].takes(), counts[l].grafts(), options.coverage()),
                    Optional.of(
                        DrawSummary.estimate(
                            DrawSummary.column(evidence.takes(), l), options.coverage())),
                    named.contains(evidence.levels().get(l))))
        .sorted(Comparator.comparingDouble(l -> l.take().map(Estimate::value).orElse(1.0)))
        .toList();
  }
}
