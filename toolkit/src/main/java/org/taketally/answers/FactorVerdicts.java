package org.taketally.answers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;

/** Works out a {@link FactorVerdict}: what can be compared, the evidence, and the rules. */
final class FactorVerdicts {

  /** Share of the grafts the comparable levels must hold for a verdict on them alone. */
  private static final double MOST = 0.80;

  private final String factor;
  private final AnswerOptions options;
  private final Entanglement entanglement;
  private final TakeCount tally;
  private final List<String> notes = new ArrayList<>();

  private FactorVerdicts(Cells cells, String factor, AnswerOptions options) {
    this.factor = factor;
    this.options = options;
    this.entanglement = Entanglement.of(withoutPairings(cells), factor, options);
    this.tally = Counted.all(cells);
  }

  /**
   * The verdict on a column.
   *
   * @param main draws of the main fit, which has the column
   * @param factor the column
   * @param options margin, level, seed
   * @return the verdict
   */
  static FactorVerdict of(Averaging main, String factor, AnswerOptions options) {
    FactorVerdicts verdicts = new FactorVerdicts(main.fit().cells(), factor, options);
    return verdicts.comparable().isEmpty()
        ? verdicts.entangled(main.fit().cells())
        : verdicts.verdict(verdicts.prepared(main));
  }

  /** The verdict by counts alone, for records of which none or all took. */
  static FactorVerdict byCounts(Cells cells, String factor, AnswerOptions options) {
    FactorVerdicts verdicts = new FactorVerdicts(cells, factor, options);
    if (verdicts.comparable().isEmpty()) {
      return verdicts.entangled(cells);
    }
    verdicts.notes.add(
        "%s of the grafts took, so nothing could be adjusted for: this rests on the counts alone."
            .formatted(cells.takesTotal() == 0 ? "None" : "All"));
    List<String> levels = verdicts.comparable();
    TakeCount[] counts = Counted.byLevel(cells, factor, levels);
    return verdicts.verdict(cells, FactorEvidence.byCounts(levels, counts, options));
  }

  /** The verdict where the column couldn't be kept in the model: what hangs together with what. */
  static FactorVerdict refused(Cells cells, String factor, AnswerOptions options) {
    return new FactorVerdicts(cells, factor, options).entangled(cells);
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
    Entanglement.Group largest = entanglement.groups().get(0);
    boolean enough = largest.levels().size() > 1 && largest.grafts() >= MOST * tally.grafts();
    return enough ? largest.levels() : List.of();
  }

  /** The main fit on the comparable levels, batches allowed for if levels changed between them. */
  private Averaging prepared(Averaging main) {
    Cells cells = main.fit().cells();
    TakeModel model = main.fit().model();
    List<String> kept = comparable();
    if (entanglement.groups().size() > 1) {
      Factor column = cells.factor(factor);
      cells =
          cells.where(
              i -> column.codes()[i] >= 0 && kept.contains(column.levels().get(column.codes()[i])));
      noteLeftOut(kept);
    }
    for (Entanglement.Tie tie : entanglement.ties()) {
      boolean unmodelled =
          tie.kind() == Entanglement.TieKind.BETWEEN_BATCHES
              && !model.columns().contains(tie.other());
      if (unmodelled) {
        model = model.varyBy(tie.other());
        notes.add(
            "The %s was added to the model, because %s changed mostly between them."
                .formatted(Words.column(tie.other()), Words.levels(factor)));
      }
    }
    return cells == main.fit().cells() && model == main.fit().model()
        ? main
        : new Averaging(SturdyFit.of(cells, model).fit(), options);
  }

  private void noteLeftOut(List<String> kept) {
    List<String> out =
        entanglement.groups().stream()
            .flatMap(group -> group.levels().stream())
            .filter(level -> !kept.contains(level))
            .toList();
    notes.add(
        "Left out, because these records can't compare it with the others: %s."
            .formatted(Words.list(out)));
  }

  private FactorVerdict entangled(Cells cells) {
    List<String> levels =
        entanglement.groups().stream().flatMap(group -> group.levels().stream()).toList();
    List<FactorVerdict.LevelTake> counted = new ArrayList<>();
    for (String level : levels) {
      counted.add(levelTake(level, Counted.byLevel(cells, factor, List.of(level))[0]));
    }
    return new FactorVerdict(
        factor,
        Verdict.ENTANGLED,
        VerdictWords.entangled(factor, entanglement, tally),
        counted,
        Optional.empty(),
        List.of(),
        Optional.empty(),
        entanglement,
        tally,
        options);
  }

  private FactorVerdict.LevelTake levelTake(String level, TakeCount count) {
    return new FactorVerdict.LevelTake(
        level,
        count,
        TakeRateInterval.wilson(count.takes(), count.grafts(), options.level()),
        Optional.empty(),
        false);
  }

  private FactorVerdict verdict(Averaging main) {
    FactorEvidence evidence = FactorEvidence.of(main, factor, options);
    noteBounded(evidence.bounded());
    return verdict(main.fit().cells(), evidence);
  }

  private FactorVerdict verdict(Cells cells, FactorEvidence evidence) {
    TakeCount[] counts = Counted.byLevel(cells, factor, evidence.levels());
    PairDifferences free = new PairDifferences(evidence.levels(), evidence.free(), options.level());
    double[][] judged =
        evidence.bounded().isEmpty() ? evidence.free() : CountedTakes.draws(counts, options);
    List<FactorVerdict.Pair> pairs = free.pairs(options.margin(), judged);
    double[] largest = PairDifferences.largest(evidence.drawn());
    double within = Samples.chance(largest, x -> x < options.margin());
    Verdict verdict =
        VerdictRules.verdict(
            new VerdictRules.Evidence(
                differenceShown(evidence.tests(), pairs),
                pairs.stream().allMatch(FactorVerdict.Pair::equivalent),
                1 - within));
    FactorVerdict.Size size =
        new FactorVerdict.Size(
            evidence.standardDeviation(), Samples.median(largest, options.level()), within, pairs);
    FactorVerdict.Detectable detectable =
        new Detection(free, PairDifferences.means(evidence.drawn()), options)
            .detectable(verdict, factor, cells.graftsTotal());
    List<FactorVerdict.LevelTake> levels = levelTakes(evidence, counts, verdict);
    List<String> reasons =
        new VerdictWords(factor, verdict, size, detectable, Counted.all(cells), options)
            .reasons(levels, evidence.tests(), entanglement, notes);
    return new FactorVerdict(
        factor,
        verdict,
        reasons,
        levels,
        Optional.of(size),
        evidence.tests(),
        Optional.of(detectable),
        entanglement,
        Counted.all(cells),
        options);
  }

  private void noteBounded(List<String> bounded) {
    if (!bounded.isEmpty()) {
      notes.add(
          "On %s none or all took, so \"no difference\" was judged by the counts alone, nothing adjusted."
              .formatted(Words.list(bounded)));
    }
  }

  private static boolean differenceShown(
      List<FactorVerdict.Test> tests, List<FactorVerdict.Pair> pairs) {
    return tests.isEmpty()
        ? pairs.stream().anyMatch(p -> p.difference().low() > 0)
        : tests.get(0).p() < VerdictRules.CHANCE_AT_MOST;
  }

  private List<FactorVerdict.LevelTake> levelTakes(
      FactorEvidence evidence, TakeCount[] counts, Verdict verdict) {
    boolean[] out =
        verdict == Verdict.MATTERS
            ? StandingOut.of(evidence.free(), options.margin())
            : new boolean[counts.length];
    return IntStream.range(0, counts.length)
        .mapToObj(
            l ->
                new FactorVerdict.LevelTake(
                    evidence.levels().get(l),
                    counts[l],
                    TakeRateInterval.wilson(counts[l].takes(), counts[l].grafts(), options.level()),
                    Optional.of(
                        Samples.estimate(Samples.column(evidence.free(), l), options.level())),
                    out[l]))
        .sorted(Comparator.comparingDouble(l -> l.take().map(Estimate::value).orElse(1.0)))
        .toList();
  }
}
