package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.answers.counts.TakeCount;

/** A verdict in words a club member can follow. */
final class VerdictWords {

  private final String column;
  private final Verdict verdict;
  private final FactorVerdict.Size size;
  private final FactorVerdict.Detectable detectable;
  private final TakeCount tally;
  private final AnswerOptions options;

  VerdictWords(
      String factor,
      Verdict verdict,
      FactorVerdict.Size size,
      FactorVerdict.Detectable detectable,
      TakeCount tally,
      AnswerOptions options) {
    this.column = Words.column(factor);
    this.verdict = verdict;
    this.size = size;
    this.detectable = detectable;
    this.tally = tally;
    this.options = options;
  }

  List<String> reasons(
      List<FactorVerdict.LevelTake> levels,
      List<FactorVerdict.Test> tests,
      Entanglement entanglement) {
    List<String> reasons = new ArrayList<>();
    reasons.add(headline(levels));
    if (verdict == Verdict.ENTANGLED) {
      reasons.add(entanglement.headline());
      entanglement.tiesOfCompared().stream()
          .filter(Entanglement.Tie::refuses)
          .limit(3)
          .forEach(tie -> reasons.add(tie.sentence()));
      return reasons;
    }
    FactorVerdict.Pair widest = size.pairs().get(0);
    reasons.add(
        "The largest gap is between %s and %s: %s (likely %s), averaged over the mix of cultivars and conditions in these records."
            .formatted(
                widest.level(),
                widest.other(),
                Words.points(widest.difference().value()),
                Words.points(widest.difference().interval())));
    reasons.add(
        "The chance that all levels lie within %s of each other is %s."
            .formatted(Words.points(options.margin()), Words.percent(size.chanceWithinMargin())));
    tests.stream().limit(1).forEach(test -> reasons.add(chance(test)));
    reasons.add(detectable.sentence());
    detectable
        .moreGrafts()
        .ifPresent(
            more ->
                reasons.add(
                    "About %s more grafts, spread over levels and days as here, would probably settle it."
                        .formatted(Words.count(more))));
    entanglement.tiesOfCompared().stream()
        .filter(tie -> tie.efficiency() < Entanglement.WARN_BELOW)
        .limit(2)
        .forEach(tie -> reasons.add("Mind: " + tie.sentence()));
    return reasons;
  }

  private String chance(FactorVerdict.Test test) {
    double p = test.p();
    String often =
        p < 0.001
            ? "less than once in 1,000 sets of records"
            : "in about %s of 100 sets of records"
                .formatted(
                    p < 0.1 ? String.format(Locale.ROOT, "%.1f", 100 * p) : Math.round(100 * p));
    return "If %s made no difference at all, chance alone would show differences like these %s."
        .formatted(column, often);
  }

  private String headline(List<FactorVerdict.LevelTake> levels) {
    String from = "from %s".formatted(Words.count(tally.grafts(), "graft"));
    Estimate largest = size.largest();
    String gap =
        "%s (likely %s)".formatted(Words.points(largest.value()), Words.points(largest.interval()));
    return switch (verdict) {
      case NO_PRACTICAL_DIFFERENCE ->
          "No practical difference: the best and the worst of %d levels of %s are %s apart, which is within your margin of %s; %s."
              .formatted(levels.size(), column, gap, Words.points(options.margin()), from);
      case LESS_THAN_YOU_CARE_ABOUT ->
          "It differs, but less than you care about: the best and the worst of %d levels of %s are %s apart, within your margin of %s; %s."
              .formatted(levels.size(), column, gap, Words.points(options.margin()), from);
      case MATTERS -> "It matters: " + standingOut(levels, gap) + "; " + from + ".";
      case CANT_TELL_YET ->
          "Can't tell yet: the best and the worst of %d levels of %s are %s apart, your margin is %s; %s."
              .formatted(levels.size(), column, gap, Words.points(options.margin()), from);
      case ENTANGLED ->
          "Entangled: the levels of %s were not compared within the same cultivars, grafters and seasons, so no difference between them can be given; %s."
              .formatted(column, from);
    };
  }

  private String standingOut(List<FactorVerdict.LevelTake> levels, String gap) {
    List<String> named =
        levels.stream()
            .filter(FactorVerdict.LevelTake::standsOut)
            .map(l -> l.level() + " takes " + Words.take(l.take().orElseThrow()))
            .toList();
    if (named.isEmpty()) {
      return "the best and the worst of %d levels of %s are %s apart"
          .formatted(levels.size(), column, gap);
    }
    List<Double> others =
        levels.stream()
            .filter(l -> !l.standsOut())
            .map(l -> l.take().orElseThrow().value())
            .toList();
    if (others.isEmpty()) {
      return Words.list(named) + ", a gap of " + gap;
    }
    return "%s, the other %s".formatted(Words.list(named), othersTake(others));
  }

  private String othersTake(List<Double> others) {
    double low = others.stream().mapToDouble(x -> x).min().orElse(0);
    double high = others.stream().mapToDouble(x -> x).max().orElse(0);
    String takes =
        Math.round(100 * low) == Math.round(100 * high)
            ? Words.percent(low)
            : "%d to %s".formatted(Math.round(100 * low), Words.percent(high));
    return others.size() == 1
        ? "one takes about " + takes
        : others.size() + " levels of " + column + " take about " + takes;
  }
}
