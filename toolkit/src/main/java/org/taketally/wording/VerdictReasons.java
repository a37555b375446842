package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.answers.Estimate;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.CultivarSwap;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.Verdict;

/** A verdict and its reasons in words a club member can follow. */
final class VerdictReasons {

  private static final int MOST_TIES = 2;
  private static final int MOST_REFUSING_TIES = 3;

  private final FactorVerdict verdict;
  private final String factor;
  private final String column;
  private final FactorVerdict.Size size;
  private final FactorVerdict.Detectable detectable;
  private final String from;
  private final String margin;

  private VerdictReasons(FactorVerdict verdict) {
    this.verdict = verdict;
    this.factor = verdict.factor();
    this.column = Words.column(factor);
    this.size = verdict.size().orElseThrow();
    this.detectable = verdict.detectable().orElseThrow();
    this.from = "from " + Words.count(verdict.tally().grafts(), "graft");
    this.margin = Words.points(verdict.options().margin());
  }

  /** The reasoning, one sentence each, the headline first. */
  static List<String> of(FactorVerdict verdict) {
    return verdict.verdict() == Verdict.ENTANGLED
        ? entangled(verdict)
        : new VerdictReasons(verdict).reasons();
  }

  private static List<String> entangled(FactorVerdict verdict) {
    String levels = Words.levels(verdict.factor());
    List<String> reasons = new ArrayList<>();
    reasons.add(
        "Entangled: the %s were not compared within the same cultivars, grafters and seasons, so no difference between them can be given; from %s."
            .formatted(levels, Words.count(verdict.tally().grafts(), "graft")));
    reasons.add(new ConfoundingWords(verdict.confounding()).headline());
    verdict.confounding().tiesOfCompared().stream()
        .filter(Confounding.Tie::refuses)
        .limit(MOST_REFUSING_TIES)
        .forEach(tie -> reasons.add(TieWords.sentence(tie)));
    reasons.add(
        "To compare them, graft the same cultivars on two or more of the %s in the same week, by the same hands."
            .formatted(levels));
    return reasons;
  }

  private List<String> reasons() {
    List<String> reasons = new ArrayList<>();
    reasons.add(headline());
    if (open()) {
      reasons.add(whatIsMissing());
    }
    if (verdict.levels().size() > 2) {
      reasons.add(widest());
    }
    reasons.add(
        "The chance that all lie within %s of each other is %s."
            .formatted(margin, Words.chance(size.probabilityWithinMargin())));
    verdict.tests().stream().limit(1).forEach(test -> reasons.add(chance(test)));
    reasons.add(detectable(factor, detectable));
    verdict.notes().forEach(note -> reasons.add(new VerdictNotes(verdict).sentence(note)));
    verdict.confounding().tiesOfCompared().stream()
        .filter(tie -> tie.efficiency() < Confounding.WARN_BELOW)
        .limit(MOST_TIES)
        .forEach(tie -> reasons.add("Mind: " + TieWords.sentence(tie)));
    return reasons;
  }

  private boolean open() {
    return verdict.verdict() == Verdict.CANT_TELL_YET
        || verdict.verdict() == Verdict.DIFFERS_UNSETTLED;
  }

  /** Which two lie furthest apart; how far stands in the headline, so is said only of others. */
  private String widest() {
    FactorVerdict.Pair widest = size.pairs().get(0);
    String said = headlineIsOf(widest) ? "" : ": " + likely(widest);
    return "The widest gap is between %s and %s%s, averaged over the mix of cultivars and conditions in these records."
        .formatted(widest.level(), widest.other(), said);
  }

  private boolean headlineIsOf(FactorVerdict.Pair pair) {
    return verdict.telling().filter(pair::equals).isPresent();
  }

  /** A gap with the one range that decides what is said of it. */
  private String likely(FactorVerdict.Pair pair) {
    Estimate gap = pair.deciding(verdict.options().margin());
    return "%s (likely %s)".formatted(Words.points(gap.value()), Words.points(gap.interval()));
  }

  /** What the records could have shown. */
  static String detectable(String factor, FactorVerdict.Detectable detectable) {
    return "In 8 of 10 sets of records like these, a true difference of %s between two %s would have been seen, and, if there were none at all, \"no difference\" could have been claimed within a margin of %s."
        .formatted(
            Words.points(detectable.smallestDifference()),
            Words.levels(factor),
            Words.points(detectable.equivalenceMargin()));
  }

  private String whatIsMissing() {
    String more =
        detectable.moreGrafts().isPresent()
            ? "About %s more grafts, spread over %s, cultivars, hands and days as here, would probably settle it."
                .formatted(Words.count(detectable.moreGrafts().getAsLong()), Words.levels(factor))
            : "Even 30 times as many grafts might not settle it, because the difference seems to"
                + " lie close to the margin itself; a wider or narrower margin would.";
    return (verdict.verdict() == Verdict.DIFFERS_UNSETTLED
            ? "These grafts are too few to say on which side of the margin the difference lies. "
            : "These grafts are too few to rule out a difference as large as the margin. ")
        + more;
  }

  private String chance(FactorVerdict.Test test) {
    double p = test.pValue();
    String often =
        p < 0.001
            ? "less than once in 1,000 sets of records"
            : "in about %s of 100 sets of records"
                .formatted(
                    p < 0.1 ? String.format(Locale.ROOT, "%.1f", 100 * p) : Math.round(100 * p));
    return "If %s made no difference at all, chance alone would show differences like these %s."
        .formatted(column, often);
  }

  private String headline() {
    String swapping =
        "swapping between these %d %s".formatted(verdict.levels().size(), Words.levels(factor));
    String yours = "your margin of " + margin;
    return switch (verdict.verdict()) {
      case NO_PRACTICAL_DIFFERENCE ->
          "No practical difference: %s moves take by at most %s, within %s; %s."
              .formatted(swapping, atMost(), yours, from);
      case LESS_THAN_YOU_CARE_ABOUT ->
          "It differs, but less than you care about: %s moves take by at most %s, within %s; %s."
              .formatted(swapping, atMost(), yours, from);
      case MATTERS -> "It matters: %s; %s; %s.".formatted(standingOut(), apart(), from);
      case DIFFERS_UNSETTLED ->
          "It differs, how much isn't settled: %s, where %s is the question; %s."
              .formatted(apart(), yours, from);
      case DEPENDS_ON_CULTIVAR -> "It depends on the cultivar: %s; %s.".formatted(swaps(), from);
      case CANT_TELL_YET ->
          "Can't tell yet: %s moves take by %s, where %s is the question; %s."
              .formatted(swapping, atMost(), yours, from);
      case ENTANGLED -> throw new IllegalStateException("entangled has words of its own");
    };
  }

  /** The widest gap as estimated, and the end of the ranges that decide. */
  private String atMost() {
    return "%s (likely under %s)"
        .formatted(
            Words.aboutPoints(size.pairs().get(0).difference().value()),
            Words.points(Math.max(0.01, verdict.atMost())));
  }

  /** The gap that tells the verdict, with the range that decides it. */
  private String apart() {
    FactorVerdict.Pair pair = verdict.telling().orElseThrow();
    return "%s takes %s less than %s (likely %s)"
        .formatted(
            pair.other(),
            Words.points(pair.difference().value()),
            pair.level(),
            Words.points(pair.deciding(verdict.options().margin()).interval()));
  }

  private String swaps() {
    return verdict.notes().stream()
        .filter(CultivarSwap.class::isInstance)
        .map(CultivarSwap.class::cast)
        .map(
            swap ->
                "%s takes more than %s on %s and less on %s, each by more than your margin of %s; averaged over cultivars %s"
                    .formatted(
                        swap.level(), swap.other(), swap.more(), swap.less(), margin, apart()))
        .findFirst()
        .orElse(apart());
  }

  private String standingOut() {
    List<LevelTake> out = verdict.levels().stream().filter(LevelTake::standsOut).toList();
    List<LevelTake> others = verdict.levels().stream().filter(l -> !l.standsOut()).toList();
    if (out.isEmpty() || others.isEmpty()) {
      return "%d %s run from %s to %s"
          .formatted(
              verdict.levels().size(),
              Words.levels(factor),
              takes(verdict.levels().get(0)),
              takes(verdict.levels().get(verdict.levels().size() - 1)));
    }
    return Words.list(out.stream().map(VerdictReasons::takes).toList()) + ", " + theOthers(others);
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
