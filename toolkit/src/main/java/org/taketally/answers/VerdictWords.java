package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.answers.FactorVerdict.LevelTake;
import org.taketally.answers.counts.TakeCount;

/** A verdict in words a club member can follow. */
final class VerdictWords {

  private final String factor;
  private final String column;
  private final Verdict verdict;
  private final FactorVerdict.Size size;
  private final FactorVerdict.Detectable detectable;
  private final String from;
  private final AnswerOptions options;

  VerdictWords(
      String factor,
      Verdict verdict,
      FactorVerdict.Size size,
      FactorVerdict.Detectable detectable,
      TakeCount tally,
      AnswerOptions options) {
    this.factor = factor;
    this.column = Words.column(factor);
    this.verdict = verdict;
    this.size = size;
    this.detectable = detectable;
    this.from = "from " + Words.count(tally.grafts(), "graft");
    this.options = options;
  }

  static List<String> entangled(String factor, Entanglement entanglement, TakeCount tally) {
    List<String> reasons = new ArrayList<>();
    reasons.add(
        "Entangled: the %s were not compared within the same cultivars, grafters and seasons, so no difference between them can be given; from %s."
            .formatted(Words.levels(factor), Words.count(tally.grafts(), "graft")));
    reasons.add(entanglement.headline());
    entanglement.tiesOfCompared().stream()
        .filter(Entanglement.Tie::refuses)
        .limit(3)
        .forEach(tie -> reasons.add(tie.sentence()));
    reasons.add(
        "To compare them, graft the same cultivars on two or more of the %s in the same week, by the same hands."
            .formatted(Words.levels(factor)));
    return reasons;
  }

  List<String> reasons(
      List<LevelTake> levels,
      List<FactorVerdict.Test> tests,
      Entanglement entanglement,
      List<String> notes) {
    List<String> reasons = new ArrayList<>();
    reasons.add(headline(levels));
    if (verdict == Verdict.CANT_TELL_YET) {
      reasons.add(whatIsMissing());
    }
    FactorVerdict.Pair widest = size.pairs().get(0);
    if (levels.size() > 2) {
      reasons.add(
          "Taken as they stand, the widest gap is between %s and %s: %s (likely %s), averaged over the mix of cultivars and conditions in these records."
              .formatted(
                  widest.level(),
                  widest.other(),
                  Words.points(widest.difference().value()),
                  Words.points(widest.difference().interval())));
    }
    reasons.add(
        "The chance that all lie within %s of each other is %s."
            .formatted(Words.points(options.margin()), Words.chance(size.chanceWithinMargin())));
    tests.stream().limit(1).forEach(test -> reasons.add(chance(test)));
    reasons.add(detectable.sentence());
    reasons.addAll(notes);
    entanglement.tiesOfCompared().stream()
        .filter(tie -> tie.efficiency() < Entanglement.WARN_BELOW)
        .limit(2)
        .forEach(tie -> reasons.add("Mind: " + tie.sentence()));
    return reasons;
  }

  private String whatIsMissing() {
    String more =
        detectable.moreGrafts().isPresent()
            ? "About %s more grafts, spread over %s, cultivars, hands and days as here, would probably settle it."
                .formatted(Words.count(detectable.moreGrafts().getAsLong()), Words.levels(factor))
            : "Even 30 times as many grafts might not settle it, because the difference seems to lie close to the margin itself; a wider or narrower margin would.";
    boolean far = size.chanceWithinMargin() < 0.5;
    return (far
            ? "These grafts are too few to rule out chance. "
            : "These grafts are too few to rule out a difference as large as the margin. ")
        + more;
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

  private String headline(List<LevelTake> levels) {
    String swapping = "swapping between these %d %s".formatted(levels.size(), Words.levels(factor));
    String by =
        "%s (likely under %s)"
            .formatted(
                Words.points(size.largest().value()),
                Words.points(Math.max(0.01, size.largest().high())));
    String margin = "your margin of " + Words.points(options.margin());
    return switch (verdict) {
      case NO_PRACTICAL_DIFFERENCE ->
          "No practical difference: %s moves take by at most about %s, within %s; %s."
              .formatted(swapping, by, margin, from);
      case LESS_THAN_YOU_CARE_ABOUT ->
          "It differs, but less than you care about: %s moves take by at most about %s, within %s; %s."
              .formatted(swapping, by, margin, from);
      case MATTERS -> "It matters: " + standingOut(levels) + "; " + from + ".";
      case CANT_TELL_YET ->
          "Can't tell yet: %s may move take by %s, where %s is the question; %s."
              .formatted(swapping, Words.points(size.largest().interval()), margin, from);
      case ENTANGLED -> throw new IllegalStateException("entangled has words of its own");
    };
  }

  private String standingOut(List<LevelTake> levels) {
    List<LevelTake> out = levels.stream().filter(LevelTake::standsOut).toList();
    List<LevelTake> others = levels.stream().filter(l -> !l.standsOut()).toList();
    if (out.isEmpty() || others.isEmpty()) {
      return "%d %s run from %s to %s"
          .formatted(
              levels.size(),
              Words.levels(factor),
              takes(levels.get(0)),
              takes(levels.get(levels.size() - 1)));
    }
    return Words.list(out.stream().map(VerdictWords::takes).toList()) + ", " + theOthers(others);
  }

  private static String takes(LevelTake level) {
    return level.level() + " takes " + Words.take(level.take().orElseThrow());
  }

  private String theOthers(List<LevelTake> others) {
    if (others.size() == 1) {
      return takes(others.get(0));
    }
    double low = others.get(0).take().orElseThrow().value();
    double high = others.get(others.size() - 1).take().orElseThrow().value();
    String range =
        Math.round(100 * low) == Math.round(100 * high)
            ? Words.percent(low)
            : "%d to %s".formatted(Math.round(100 * low), Words.percent(high));
    return "the other %d %s about %s".formatted(others.size(), Words.levels(factor), range);
  }
}
