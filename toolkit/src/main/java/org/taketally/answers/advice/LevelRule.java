package org.taketally.answers.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.taketally.answers.Estimate;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.answers.verdict.LevelComparison;

/**
 * Which levels of a factor to use rather than which others.
 *
 * <p>A level is advised against only if it surely took worse than the best one, and by half the
 * margin or more; levels are advised only if each surely took better than every one advised
 * against. Levels that were hardly used beside each other are not parted at all.
 */
final class LevelRule {

  private final LevelComparison comparison;
  private final Sureness sureness;
  private final boolean withinHands;

  LevelRule(LevelComparison comparison, Sureness sureness) {
    this(comparison, sureness, false);
  }

  /**
   * A rule for a comparison made within hands and days.
   *
   * @param withinHands whether only levels that met within hands and days are among the pairs
   */
  LevelRule(LevelComparison comparison, Sureness sureness, boolean withinHands) {
    this.comparison = comparison;
    this.sureness = sureness;
    this.withinHands = withinHands;
  }

  /** Why nothing can be advised, whatever the sizes of differences; empty if something can. */
  Optional<NoAdvice.Reason> barred() {
    boolean apart = !withinHands && comparison.confounding().efficiency() < Confounding.WARN_BELOW;
    if (comparison.pairs().isEmpty() || apart) {
      return Optional.of(NoAdvice.Reason.NOT_COMPARED);
    }
    return comparison.pairs().stream().allMatch(Pair::equivalent)
        ? Optional.of(NoAdvice.Reason.NO_PRACTICAL_DIFFERENCE)
        : Optional.empty();
  }

  Optional<PreferLevels> advice() {
    List<String> levels = lowestFirst();
    if (barred().isPresent() || levels.size() < 2) {
      return Optional.empty();
    }
    String best = levels.get(levels.size() - 1);
    List<String> than = levels.stream().filter(level -> better(best, level).isPresent()).toList();
    if (than.isEmpty()) {
      return Optional.empty();
    }
    List<String> rather =
        levels.stream()
            .filter(level -> than.stream().allMatch(t -> better(level, t).isPresent()))
            .toList();
    return Optional.of(between(rather, than));
  }

  /**
   * Advice that another comparison gives as well.
   *
   * @param other advice on the same factor
   * @return what both say, as sure as this comparison makes it; empty if they share nothing
   */
  Optional<PreferLevels> confirming(PreferLevels other) {
    return advice()
        .flatMap(
            own -> {
              List<String> rather = own.rather().stream().filter(other.rather()::contains).toList();
              List<String> than = own.than().stream().filter(other.than()::contains).toList();
              return rather.isEmpty() || than.isEmpty()
                  ? Optional.empty()
                  : Optional.of(between(rather, than));
            });
  }

  private PreferLevels between(List<String> rather, List<String> than) {
    List<Pair> gains = new ArrayList<>();
    rather.forEach(r -> than.forEach(t -> better(r, t).ifPresent(gains::add)));
    Estimate least =
        gains.stream()
            .min(Comparator.comparingDouble(pair -> pair.difference().value()))
            .orElseThrow()
            .deciding(comparison.options().margin());
    double sure =
        gains.stream().map(Pair::difference).mapToDouble(sureness::above).min().orElseThrow();
    return new PreferLevels(
        comparison.factor(), rather, than, least, sure, grafts(rather) + grafts(than));
  }

  private long grafts(List<String> levels) {
    return comparison.levels().stream()
        .filter(level -> levels.contains(level.level()))
        .mapToLong(level -> level.tally().grafts())
        .sum();
  }

  private List<String> lowestFirst() {
    Predicate<LevelTake> estimated = level -> level.take().isPresent();
    return comparison.levels().stream()
        .filter(estimated)
        .sorted(Comparator.comparingDouble(level -> level.take().orElseThrow().value()))
        .map(LevelTake::level)
        .toList();
  }

  /** By how much one level took better than another, if that is sure and worth acting on. */
  private Optional<Pair> better(String one, String other) {
    return between(one, other)
        .filter(pair -> pair.difference().value() >= comparison.options().margin() / 2)
        .filter(pair -> sureness.above(pair.difference()) >= SeasonAdviceCalculator.SURE);
  }

  private Optional<Pair> between(String one, String other) {
    for (Pair pair : comparison.pairs()) {
      if (pair.equivalent()) {
        continue;
      }
      if (pair.level().equals(one) && pair.other().equals(other)) {
        return Optional.of(pair);
      }
      if (pair.level().equals(other) && pair.other().equals(one)) {
        return Optional.of(pair.turned());
      }
    }
    return Optional.empty();
  }
}
