package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.confounding.ConfoundingFinder;
import org.taketally.answers.counts.CountedTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/** Works out a {@link FactorVerdict}: what can be compared, the evidence, and the rules. */
public final class FactorVerdictCalculator {

  /** Share of the grafts the comparable levels must hold for a verdict on them alone. */
  private static final double MOST = 0.80;

  private final String factor;
  private final AnswerOptions options;
  private final Confounding confounding;
  private final TakeCount tally;
  private final List<FactorVerdict.Note> notes = new ArrayList<>();

  private FactorVerdictCalculator(Cells cells, String factor, AnswerOptions options) {
    this.factor = factor;
    this.options = options;
    this.confounding = ConfoundingFinder.of(withoutPairings(cells), factor, options);
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
    FactorVerdictCalculator verdicts =
        new FactorVerdictCalculator(main.fit().cells(), factor, options);
    return verdicts.comparable().isEmpty()
        ? verdicts.entangled(main.fit().cells())
        : verdicts.verdict(verdicts.prepared(main));
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

  /** Only the columns that could entangle: pairings are made of the factor itself. */
  private static Cells withoutPairings(Cells cells) {
    return new Cells(
        cells.factors().stream().filter(f -> !f.name().equals(TakeModel.PAIRING)).toList(),
        List.of(),
        cells.grafts(),
        cells.takes(),
        cells.logCoefficients(),
        cells.provenance());
  }

  /** Levels the verdict is about: the largest comparable group if it holds most grafts. */
  private List<String> comparable() {
    Confounding.Group largest = confounding.groups().get(0);
    boolean enough = largest.levels().size() > 1 && largest.grafts() >= MOST * tally.grafts();
    return enough ? largest.levels() : List.of();
  }

  /** The main fit on the comparable levels, batches allowed for if levels changed between them. */
  private MarginalTakes prepared(MarginalTakes main) {
    Cells cells = main.fit().cells();
    TakeModel model = main.fit().model();
    List<String> kept = comparable();
    if (confounding.groups().size() > 1) {
      Factor column = cells.factor(factor);
      cells =
          cells.where(
              i -> column.codes()[i] >= 0 && kept.contains(column.levels().get(column.codes()[i])));
      noteLeftOut(kept);
    }
    for (Confounding.Tie tie : confounding.ties()) {
      boolean unmodelled =
          tie.kind() == Confounding.TieKind.BETWEEN_BATCHES
              && !model.columns().contains(tie.other());
      if (unmodelled) {
        model = model.varyBy(tie.other());
        notes.add(new FactorVerdict.BatchAdded(tie.other()));
      }
    }
    return cells == main.fit().cells() && model == main.fit().model()
        ? main
        : MarginalTakes.of(FallbackFit.of(cells, model).fit(), options);
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
    FactorEvidence evidence = FactorEvidence.of(main, factor, options);
    noteBounded(evidence.bounded());
    return verdict(main.fit().cells(), evidence);
  }

  private FactorVerdict verdict(Cells cells, FactorEvidence evidence) {
    TakeCount[] counts = TakeCounter.byLevel(cells, factor, evidence.levels());
    PairDifferences free =
        new PairDifferences(evidence.levels(), evidence.free(), options.coverage());
    double[][] judged =
        evidence.bounded().isEmpty() ? evidence.free() : CountedTakes.draws(counts, options);
    List<FactorVerdict.Pair> pairs = free.pairs(options.margin(), judged);
    double[] largest = PairDifferences.largest(evidence.drawn());
    double within = DrawSummary.chance(largest, x -> x < options.margin());
    Verdict verdict =
        VerdictRules.verdict(
            new VerdictRules.Evidence(
                differenceShown(evidence.tests(), pairs),
                pairs.stream().allMatch(FactorVerdict.Pair::equivalent),
                1 - within));
    FactorVerdict.Size size =
        new FactorVerdict.Size(
            evidence.standardDeviation(),
            DrawSummary.median(largest, options.coverage()),
            within,
            pairs);
    FactorVerdict.Detectable detectable =
        new DetectableCalculator(free, PairDifferences.means(evidence.drawn()), options)
            .detectable(verdict, cells.graftsTotal());
    List<FactorVerdict.LevelTake> levels = levelTakes(evidence, counts, verdict);
    return new FactorVerdict(
        factor,
        verdict,
        levels,
        Optional.of(size),
        evidence.tests(),
        Optional.of(detectable),
        confounding,
        notes,
        TakeCounter.all(cells),
        options);
  }

  private void noteBounded(List<String> bounded) {
    if (!bounded.isEmpty()) {
      notes.add(new FactorVerdict.NoneOrAllTook(bounded));
    }
  }

  private static boolean differenceShown(
      List<FactorVerdict.Test> tests, List<FactorVerdict.Pair> pairs) {
    return tests.isEmpty()
        ? pairs.stream().anyMatch(p -> p.difference().low() > 0)
        : tests.get(0).pValue() < VerdictRules.CHANCE_AT_MOST;
  }

  private List<FactorVerdict.LevelTake> levelTakes(
      FactorEvidence evidence, TakeCount[] counts, Verdict verdict) {
    boolean[] out =
        verdict == Verdict.MATTERS
            ? OutlyingLevels.of(evidence.free(), options.margin())
            : new boolean[counts.length];
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
                            DrawSummary.column(evidence.free(), l), options.coverage())),
                    out[l]))
        .sorted(Comparator.comparingDouble(l -> l.take().map(Estimate::value).orElse(1.0)))
        .toList();
  }
}
