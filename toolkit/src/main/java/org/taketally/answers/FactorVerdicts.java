package org.taketally.answers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.cells.Cells;
import org.taketally.model.Bootstrap;
import org.taketally.model.CannotFit;
import org.taketally.model.Nested;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.terms.Interval;

/** Works out a {@link FactorVerdict}: fits with and without the factor, sizes, and the rules. */
final class FactorVerdicts {

  private static final int REFIT_CELLS = 200_000;
  private static final int BOOTSTRAP_CELLS = 500;
  private static final double STANDS_OUT_SURE = 0.975;

  private final Averaging averaging;
  private final String factor;
  private final AnswerOptions options;
  private final TakeFit fit;
  private final Cells cells;

  private FactorVerdicts(Averaging averaging, String factor, AnswerOptions options) {
    this.averaging = averaging;
    this.factor = factor;
    this.options = options;
    this.fit = averaging.fit();
    this.cells = fit.cells();
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
    return new FactorVerdicts(withFixedLevels(main, factor, options), factor, options).verdict();
  }

  /** Drawing levels toward each other would help equivalence, so sizes come from fixed levels. */
  private static Averaging withFixedLevels(Averaging main, String factor, AnswerOptions options) {
    TakeFit fit = main.fit();
    if (!Swap.varies(fit, factor) || fit.cells().size() > REFIT_CELLS) {
      return main;
    }
    try {
      return new Averaging(fit.model().without(factor).adjustFor(factor).fit(fit.cells()), options);
    } catch (CannotFit noFixedLevels) {
      return main;
    }
  }

  private FactorVerdict verdict() {
    Entanglement entanglement = Entanglement.of(meetings(), factor, options);
    List<String> levels = averaging.levels(factor);
    double[][] takes = averaging.takes(factor);
    PairDifferences differences = new PairDifferences(levels, takes, options.level());
    List<FactorVerdict.Pair> pairs = differences.pairs(options.margin());
    double[] largest = differences.largest();
    List<FactorVerdict.Test> tests = tests();
    double within = Samples.chance(largest, x -> x < options.margin());
    boolean entangled =
        !entanglement.comparable() || entanglement.efficiency() < Entanglement.ENTANGLED_BELOW;
    Verdict verdict =
        VerdictRules.verdict(
            new VerdictRules.Evidence(
                entangled,
                differenceShown(tests, pairs),
                pairs.stream().allMatch(FactorVerdict.Pair::equivalent),
                within));
    FactorVerdict.Size size = new FactorVerdict.Size(spread(), gap(pairs, largest), within, pairs);
    Detection detection = new Detection(differences.standardErrors(), size, cells, options);
    TakeCount tally = Counted.all(cells);
    FactorVerdict.Detectable detectable = detection.detectable(verdict, factor);
    VerdictWords words = new VerdictWords(factor, verdict, size, detectable, tally, options);
    List<FactorVerdict.LevelTake> shown = levelTakes(levels, takes, verdict);
    return new FactorVerdict(
        factor,
        verdict,
        words.reasons(shown, tests, entanglement),
        entangled ? withoutTakes(shown) : shown,
        entangled ? Optional.empty() : Optional.of(size),
        tests,
        entangled ? Optional.empty() : Optional.of(detectable),
        entanglement,
        tally,
        options);
  }

  /** Only the columns that could entangle: pairings are made of the factor itself. */
  private Cells meetings() {
    return new Cells(
        cells.factors().stream().filter(f -> !f.name().equals(TakeModel.PAIRING)).toList(),
        List.of(),
        cells.grafts(),
        cells.takes(),
        cells.logCoefficients(),
        cells.provenance());
  }

  private boolean differenceShown(List<FactorVerdict.Test> tests, List<FactorVerdict.Pair> pairs) {
    return tests.isEmpty()
        ? pairs.stream().anyMatch(p -> p.difference().low() > 0)
        : tests.get(0).p() < VerdictRules.CHANCE_AT_MOST;
  }

  private List<FactorVerdict.Test> tests() {
    List<FactorVerdict.Test> tests = new ArrayList<>();
    if (cells.size() > REFIT_CELLS) {
      return tests;
    }
    TakeFit without = fit.model().without(factor).fit(cells);
    tests.add(test("any difference between levels", without, fit));
    try {
      TakeFit varying =
          Swap.varies(fit, factor)
              ? fit
              : fit.model().without(factor).withVarying(factor).fit(cells);
      tests.add(test("any spread of levels", without, varying));
    } catch (CannotFit noSpread) {
      // Fewer levels than a spread needs: the first test stands alone.
    }
    return tests;
  }

  private FactorVerdict.Test test(String name, TakeFit without, TakeFit with) {
    Nested nested = Nested.of(without, with);
    double p = nested.chance();
    String method = "likelihood ratio";
    if (cells.size() <= BOOTSTRAP_CELLS && p > 0.002 && p < 0.25 && options.bootstraps() > 0) {
      p =
          new Bootstrap(options.bootstraps(), options.seed(), done -> {})
              .compare(without, with)
              .chance();
      method =
          "likelihood ratio, judged by %d simulated sets of records"
              .formatted(options.bootstraps());
    } else if (nested.standardDeviations() > 0) {
      method = "likelihood ratio, half chi-square at zero";
    }
    return new FactorVerdict.Test(
        name, method, nested.chiSquare(), nested.fixedEffects() + nested.standardDeviations(), p);
  }

  /** The gap between the highest and the lowest estimate, with the range of the draws' gaps. */
  private Estimate gap(List<FactorVerdict.Pair> pairs, double[] largest) {
    Interval range = Samples.range(largest, options.level());
    double gap = pairs.get(0).difference().value();
    return new Estimate(Math.min(Math.max(gap, range.low()), range.high()), range);
  }

  private Estimate spread() {
    double[] sds =
        Arrays.stream(averaging.logits(factor)).mapToDouble(FactorVerdicts::sd).toArray();
    return Samples.median(sds, options.level());
  }

  private static double sd(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    double sum = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return values.length < 2 ? 0 : Math.sqrt(sum / (values.length - 1));
  }

  private List<FactorVerdict.LevelTake> levelTakes(
      List<String> levels, double[][] takes, Verdict verdict) {
    TakeCount[] counts = Counted.byLevel(cells, factor, levels);
    boolean[] out = standsOut(takes, verdict);
    return IntStream.range(0, levels.size())
        .mapToObj(
            l ->
                new FactorVerdict.LevelTake(
                    levels.get(l),
                    counts[l],
                    TakeRateInterval.wilson(counts[l].takes(), counts[l].grafts(), options.level()),
                    Optional.of(Samples.estimate(Samples.column(takes, l), options.level())),
                    out[l]))
        .sorted(Comparator.comparingDouble(l -> l.take().map(Estimate::value).orElse(1.0)))
        .toList();
  }

  private static List<FactorVerdict.LevelTake> withoutTakes(List<FactorVerdict.LevelTake> levels) {
    return levels.stream()
        .map(
            l ->
                new FactorVerdict.LevelTake(
                    l.level(), l.tally(), l.counted(), Optional.empty(), false))
        .toList();
  }

  /** A level stands out if it surely lies over half the margin from the middle of the others. */
  private boolean[] standsOut(double[][] takes, Verdict verdict) {
    int count = takes[0].length;
    boolean[] out = new boolean[count];
    for (int l = 0; verdict == Verdict.MATTERS && l < count; l++) {
      int place = l;
      double[] away =
          Arrays.stream(takes)
              .mapToDouble(row -> row[place] - middleOfOthers(row, place))
              .toArray();
      double least = options.margin() / 2;
      out[l] =
          Samples.chance(away, x -> x < -least) >= STANDS_OUT_SURE
              || (count > 2 && Samples.chance(away, x -> x > least) >= STANDS_OUT_SURE);
    }
    return out;
  }

  private static double middleOfOthers(double[] row, int left) {
    double[] others =
        IntStream.range(0, row.length)
            .filter(l -> l != left)
            .mapToDouble(l -> row[l])
            .sorted()
            .toArray();
    int half = others.length / 2;
    return others.length % 2 == 1 ? others[half] : (others[half - 1] + others[half]) / 2;
  }
}
