package org.taketally.analysis;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.terms.Interval;

/**
 * Gives a difference that a verdict has measured the verdict's estimate and the range that decided
 * it, so that it is said with one number and one range wherever it is said: the gap from worst to
 * best, which between two levels is the typical difference as well.
 */
final class ImportanceBesideVerdicts {

  private final List<FactorVerdict> verdicts;

  ImportanceBesideVerdicts(List<FactorVerdict> verdicts) {
    this.verdicts = List.copyOf(verdicts);
  }

  FactorImportance of(FactorImportance answer) {
    return new FactorImportance(
        answer.factors().stream()
            .map(this::measured)
            .sorted(Comparator.comparingDouble((Importance m) -> m.typical().value()).reversed())
            .toList(),
        answer.tally(),
        answer.options());
  }

  private Importance measured(Importance importance) {
    return verdicts.stream()
        .filter(verdict -> verdict.factor().equals(importance.factor()))
        .flatMap(verdict -> gap(verdict, importance).stream())
        .findFirst()
        .map(gap -> with(importance, gap))
        .orElse(importance);
  }

  private static Optional<Estimate> gap(FactorVerdict verdict, Importance importance) {
    return verdict
        .pair(importance.best(), importance.worst())
        .map(pair -> pair.deciding(verdict.options().margin()));
  }

  /** The verdict may see the two the other way round. */
  private static Importance with(Importance m, Estimate gap) {
    boolean turned = gap.value() < 0;
    Estimate span = turned ? turned(gap) : gap;
    return new Importance(
        m.factor(),
        m.kind(),
        m.levels(),
        m.levels() == 2 ? size(span) : m.typical(),
        turned ? m.worst() : m.best(),
        turned ? m.best() : m.worst(),
        span,
        m.compared());
  }

  private static Estimate turned(Estimate gap) {
    Interval range = gap.interval();
    return new Estimate(-gap.value(), new Interval(-range.high(), -range.low(), range.coverage()));
  }

  /** Whichever way it points. */
  private static Estimate size(Estimate gap) {
    Interval range = gap.interval();
    double most = Math.max(Math.abs(range.low()), Math.abs(range.high()));
    return range.low() >= 0
        ? gap
        : new Estimate(gap.value(), new Interval(0, most, range.coverage()));
  }
}
