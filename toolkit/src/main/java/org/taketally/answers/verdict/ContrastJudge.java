package org.taketally.answers.verdict;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.counts.CountedTakes;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.terms.Interval;

/**
 * Judges planned contrasts by the rules of {@link VerdictRules}, each by ranges that hold for all
 * contrasts at once, so that no claim on any of them is wrong more often than those on pairs.
 */
final class ContrastJudge {

  private final List<double[]> weights;
  private final double[] takes;
  private final ContrastDifferences differences;
  private final Optional<ContrastDifferences> counted;
  private final UnassessedBounds bounds;
  private final double margin;

  private ContrastJudge(
      List<double[]> weights,
      FactorEvidence evidence,
      Optional<double[][]> counted,
      UnassessedBounds bounds,
      double margin) {
    this.weights = weights;
    this.takes = PairDifferences.means(evidence.takes());
    this.differences = new ContrastDifferences(evidence.takes(), weights);
    this.counted = counted.map(draws -> new ContrastDifferences(draws, weights));
    this.bounds = bounds;
    this.margin = margin;
  }

  static ContrastJudge of(
      List<Contrast> contrasts, MarginalTakes main, String factor, AnswerOptions options) {
    FactorEvidence evidence = FactorEvidence.of(main, factor, options);
    List<String> levels = evidence.levels();
    TakeCount[] counts = TakeCounter.byLevel(main.fit().cells(), factor, levels);
    long[] grafts = Arrays.stream(counts).mapToLong(TakeCount::grafts).toArray();
    return new ContrastJudge(
        contrasts.stream().map(contrast -> weights(contrast, levels)).toList(),
        evidence,
        evidence.bounded().isEmpty()
            ? Optional.empty()
            : Optional.of(CountedTakes.draws(counts, options)),
        UnassessedBounds.of(main.fit().cells(), factor, levels, grafts),
        options.margin());
  }

  private static double[] weights(Contrast contrast, List<String> levels) {
    return levels.stream()
        .mapToDouble(level -> contrast.weights().getOrDefault(level, 0.0))
        .toArray();
  }

  double mean(int contrast) {
    return differences.mean(contrast);
  }

  /** A range for all contrasts at once, and for whatever became of unassessed grafts. */
  Interval range(int contrast, double coverage) {
    return bounds.widened(differences.atOnce(contrast, coverage), takes, weights.get(contrast));
  }

  double probabilityBeyondMargin(int contrast) {
    return DrawSummary.probability(differences.draws(contrast), x -> Math.abs(x) > margin);
  }

  Verdict verdict(int contrast) {
    Interval beyond = range(contrast, VerdictRules.BEYOND);
    return VerdictRules.verdict(
        new VerdictRules.Evidence(
            within(range(contrast, VerdictRules.ALONE)) && withinByCounts(contrast),
            !range(contrast, VerdictRules.AT_ONCE).contains(0),
            beyond.low() > margin || beyond.high() < -margin,
            false));
  }

  /** The range that decided. */
  Interval deciding(int contrast) {
    return switch (verdict(contrast)) {
      case NO_PRACTICAL_DIFFERENCE, LESS_THAN_YOU_CARE_ABOUT -> range(contrast, VerdictRules.ALONE);
      case MATTERS -> range(contrast, VerdictRules.BEYOND);
      case DIFFERS_UNSETTLED, CANT_TELL_YET, DEPENDS_ON_CULTIVAR, ENTANGLED ->
          range(contrast, VerdictRules.AT_ONCE);
    };
  }

  /** Levels of which none or all took are judged by their counts as well. */
  private boolean withinByCounts(int contrast) {
    if (counted.isEmpty()) {
      return true;
    }
    Interval alone = counted.get().atOnce(contrast, VerdictRules.ALONE);
    return within(bounds.widened(alone, takes, weights.get(contrast)));
  }

  private boolean within(Interval range) {
    return -margin < range.low() && range.high() < margin;
  }
}
