package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.counts.CountedTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.verdict.FactorVerdict.TestMethod;
import org.taketally.answers.verdict.FactorVerdict.TestQuestion;
import org.taketally.model.Bootstrap;
import org.taketally.model.CannotFit;
import org.taketally.model.LevelTest;
import org.taketally.model.LikelihoodRatioTest;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.UnpooledLevels;
import org.taketally.model.VaryingFactor;

/**
 * What the records say about one column of levels: takes with the levels left free, takes with the
 * levels drawn toward each other, and tests of whether there is any difference.
 *
 * <p>Levels left free are what equivalence is judged by: drawing them toward each other would help
 * a claim of "no difference" along. The size of the largest difference is taken from levels drawn
 * toward each other: the best of many free estimates always looks too good.
 *
 * @param levels level names
 * @param free average take of each level, one row a draw, levels free
 * @param drawn the same, levels drawn toward each other
 * @param standardDeviation spread of the levels, logits
 * @param tests whether there is any difference; empty if neither levels nor spread could be fitted
 * @param bounded levels of which none or all took: no finite difference to others can be fitted
 */
record FactorEvidence(
    List<String> levels,
    double[][] free,
    double[][] drawn,
    Estimate standardDeviation,
    List<FactorVerdict.Test> tests,
    List<String> bounded) {

  private static final int BOOTSTRAP_CELLS = 500;

  /** A large fit says the same to two digits and more as further fits would. */
  static FactorEvidence of(MarginalTakes main, String factor, AnswerOptions options) {
    return main.fit().isLarge()
        ? fromFitInHand(main, factor, options)
        : byRefits(main, factor, options);
  }

  /** Levels freed, or drawn toward each other, within the fit; tests by their covariance. */
  static FactorEvidence fromFitInHand(MarginalTakes main, String factor, AnswerOptions options) {
    Optional<UnpooledLevels> levels = UnpooledLevels.of(main.fit(), factor);
    boolean varies = LevelSubstitution.varies(main.fit(), factor);
    boolean canBeFree = varies && bounded(main, factor, main.levels(factor)).isEmpty();
    MarginalTakes free =
        levels
            .filter(l -> canBeFree)
            .map(l -> main.with(l.draws(main.count(), options.seed())))
            .orElse(main);
    MarginalTakes drawn =
        levels
            .filter(l -> !varies)
            .map(l -> main.with(l.drawnTogether(main.draws(), options.seed())))
            .orElse(main);
    return evidence(
        factor,
        options,
        free,
        drawn,
        levels
            .map(
                l ->
                    List.of(
                        test(TestQuestion.ANY_DIFFERENCE, TestMethod.WALD, l.anyDifference()),
                        test(
                            TestQuestion.ANY_SPREAD,
                            TestMethod.OF_LEVELS_AS_MEASURED,
                            l.anySpread())))
            .orElse(List.of()));
  }

  static FactorEvidence byRefits(MarginalTakes main, String factor, AnswerOptions options) {
    TakeFit fit = main.fit();
    boolean varies = LevelSubstitution.varies(fit, factor);
    TakeModel without = fit.model().without(factor);
    Optional<TakeFit> free =
        varies ? fitted(without.adjustFor(factor), fit) : Optional.of(main.fit());
    Optional<TakeFit> drawn = varies ? Optional.of(fit) : fitted(without.withVarying(factor), fit);
    TakeFit none = without.fit(fit.cells());
    List<FactorVerdict.Test> tests = new ArrayList<>();
    free.ifPresent(f -> tests.add(test(TestQuestion.ANY_DIFFERENCE, none, f, options)));
    drawn.ifPresent(f -> tests.add(test(TestQuestion.ANY_SPREAD, none, f, options)));
    return evidence(
        factor,
        options,
        free.map(f -> f == fit ? main : MarginalTakes.of(f, options)).orElse(main),
        drawn.map(f -> f == fit ? main : MarginalTakes.of(f, options)).orElse(main),
        tests);
  }

  /** From counts alone. */
  static FactorEvidence byCounts(List<String> levels, TakeCount[] counts, AnswerOptions options) {
    double[][] takes = CountedTakes.draws(counts, options);
    double[] sds =
        Arrays.stream(takes)
            .mapToDouble(
                row -> sd(Arrays.stream(row).map(take -> Math.log(take / (1 - take))).toArray()))
            .toArray();
    return new FactorEvidence(
        levels, takes, takes, DrawSummary.median(sds, options.coverage()), List.of(), List.of());
  }

  private static Optional<TakeFit> fitted(TakeModel model, TakeFit like) {
    try {
      return Optional.of(model.fit(like.cells()));
    } catch (CannotFit levelsOfNoneOrAll) {
      return Optional.empty();
    }
  }

  private static FactorEvidence evidence(
      String factor,
      AnswerOptions options,
      MarginalTakes free,
      MarginalTakes drawn,
      List<FactorVerdict.Test> tests) {
    List<String> levels = free.levels(factor);
    List<String> inDrawn = drawn.levels(factor);
    int[] place = levels.stream().mapToInt(inDrawn::indexOf).toArray();
    double[][] drawnTakes =
        Arrays.stream(drawn.takes(factor))
            .map(row -> Arrays.stream(place).mapToDouble(l -> row[l]).toArray())
            .toArray(double[][]::new);
    return new FactorEvidence(
        levels,
        free.takes(factor),
        drawnTakes,
        spread(drawn, factor, options),
        List.copyOf(tests),
        bounded(free, factor, levels));
  }

  private static List<String> bounded(MarginalTakes free, String factor, List<String> levels) {
    var counts = TakeCounter.byLevel(free.fit().cells(), factor, levels);
    return IntStream.range(0, counts.length)
        .filter(l -> counts[l].takes() == 0 || counts[l].failures() == 0)
        .mapToObj(levels::get)
        .toList();
  }

  private static Estimate spread(MarginalTakes drawn, String factor, AnswerOptions options) {
    int k = drawn.fit().varying().stream().map(VaryingFactor::factor).toList().indexOf(factor);
    double[] sds =
        k >= 0
            ? IntStream.range(0, drawn.count()).mapToDouble(d -> drawn.draws().sds(d)[k]).toArray()
            : Arrays.stream(drawn.logits(factor)).mapToDouble(FactorEvidence::sd).toArray();
    return DrawSummary.median(sds, options.coverage());
  }

  private static double sd(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    double sum = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return values.length < 2 ? 0 : Math.sqrt(sum / (values.length - 1));
  }

  private static FactorVerdict.Test test(TestQuestion question, TestMethod method, LevelTest test) {
    return new FactorVerdict.Test(
        question, method, 0, test.chiSquare(), test.degrees(), test.pValue());
  }

  private static FactorVerdict.Test test(
      TestQuestion question, TakeFit without, TakeFit with, AnswerOptions options) {
    LikelihoodRatioTest nested = LikelihoodRatioTest.of(without, with);
    double p = nested.pValue();
    int simulated = 0;
    TestMethod method =
        nested.standardDeviations() > 0
            ? TestMethod.LIKELIHOOD_RATIO_AT_ZERO
            : TestMethod.LIKELIHOOD_RATIO;
    if (without.cells().size() <= BOOTSTRAP_CELLS
        && p > 0.002
        && p < 0.25
        && options.bootstraps() > 0) {
      p =
          new Bootstrap(options.bootstraps(), options.seed(), done -> {})
              .compare(without, with)
              .pValue();
      method = TestMethod.SIMULATED;
      simulated = options.bootstraps();
    }
    return new FactorVerdict.Test(
        question,
        method,
        simulated,
        nested.chiSquare(),
        nested.fixedEffects() + nested.standardDeviations(),
        p);
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }
}
