package org.taketally.wording;

import java.util.Locale;
import java.util.stream.Collectors;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.AverageSeason;
import org.taketally.answers.verdict.FactorVerdict.BatchAdded;
import org.taketally.answers.verdict.FactorVerdict.BetweenGroupsOnly;
import org.taketally.answers.verdict.FactorVerdict.ComparedWithin;
import org.taketally.answers.verdict.FactorVerdict.CountsAlone;
import org.taketally.answers.verdict.FactorVerdict.CultivarSwap;
import org.taketally.answers.verdict.FactorVerdict.CultivarsMayDiffer;
import org.taketally.answers.verdict.FactorVerdict.DealtWithin;
import org.taketally.answers.verdict.FactorVerdict.EquivalentLevels;
import org.taketally.answers.verdict.FactorVerdict.LevelsLeftOut;
import org.taketally.answers.verdict.FactorVerdict.NoneOrAllTook;
import org.taketally.answers.verdict.FactorVerdict.PriorsTried;
import org.taketally.answers.verdict.FactorVerdict.Unassessed;
import org.taketally.answers.verdict.Verdict;

/** What else went into a verdict, in words. */
final class VerdictNotes {

  private final FactorVerdict verdict;
  private final String levels;
  private final String margin;

  VerdictNotes(FactorVerdict verdict) {
    this.verdict = verdict;
    this.levels = Words.levels(verdict.factor());
    this.margin = Words.points(verdict.options().margin());
  }

  String sentence(FactorVerdict.Note note) {
    if (note instanceof LevelsLeftOut out) {
      return "Left out, because these records can't compare it with the others: %s."
          .formatted(Words.list(out.levels()));
    }
    if (note instanceof BatchAdded added) {
      return "The %s was added to the model, because %s changed mostly between them."
          .formatted(Words.column(added.column()), levels);
    }
    if (note instanceof CountsAlone counts) {
      return "%s of the grafts took, so nothing could be adjusted for: this rests on the counts alone."
          .formatted(counts.allTook() ? "All" : "None");
    }
    if (note instanceof NoneOrAllTook levelsOf) {
      return "On %s none or all took, so \"no difference\" was judged by the counts alone, nothing adjusted."
          .formatted(Words.list(levelsOf.levels()));
    }
    if (note instanceof ComparedWithin within) {
      return "Compared within the same %s: %s were spread unevenly over them, and what a good or bad one does to all alike doesn't count."
          .formatted(columns(within.columns()), levels);
    }
    return more(note);
  }

  private String more(FactorVerdict.Note note) {
    if (note instanceof EquivalentLevels set) {
      return "Among themselves %s make no practical difference: any two lie within %s of each other, all looked at together. Of the others that isn't shown."
          .formatted(Words.list(set.levels()), margin);
    }
    if (note instanceof Unassessed unassessed) {
      return "Ranges allow for grafts without a result, had all of them failed or all taken: that moves differences by %s at most."
          .formatted(Words.points(unassessed.moved()));
    }
    if (note instanceof AverageSeason season) {
      return "This is about an average season. In a single one, recorded or to come, a level typically does %s better or worse than that; that in another season all lie within %s of each other has a chance of %s."
          .formatted(
              Words.points(typical(season)), margin, Words.chance(season.nextWithinMargin()));
    }
    if (note instanceof CultivarSwap swap) {
      return "On %s, %s takes more than %s by over %s; on %s it takes less by over %s."
          .formatted(swap.more(), swap.level(), swap.other(), margin, swap.less(), margin);
    }
    if (note instanceof CultivarsMayDiffer may) {
      return "Single cultivars may be exceptions: the chance that a swap moves one up and another down by over %s is %s."
          .formatted(margin, Words.chance(may.probability()));
    }
    if (note instanceof PriorsTried priors) {
      return priors(priors);
    }
    if (note instanceof BetweenGroupsOnly between) {
      return between(between);
    }
    return dealt((DealtWithin) note);
  }

  private String priors(PriorsTried priors) {
    String others =
        priors.tried().entrySet().stream()
            .filter(tried -> tried.getValue() != verdict.verdict())
            .map(
                tried ->
                    "\"%s\" with %s".formatted(Names.of(tried.getValue()), logits(tried.getKey())))
            .collect(Collectors.joining(", "));
    return others.isEmpty()
        ? "Had days, hands and the like been believed to differ half as much before the records"
            + " were seen, or twice as much, the verdict would be the same."
        : "It hangs on how much days, hands and the like were believed to differ before the records were seen (prior scale %s): it would be %s. More groups (days, beds, hands) would settle it."
            .formatted(logits(verdict.options().priorScale()), others);
  }

  /** Units are said, because grafts are what a reader would count. */
  private static String between(BetweenGroupsOnly between) {
    String column = Words.column(between.groups());
    return "Hardly any %s holds more than one of them, so %d times %s is what there is to compare, however many grafts each holds: counted so, chance gives as much in %s of 100 sets of records."
        .formatted(
            column,
            between.count(),
            column,
            String.format(
                Locale.ROOT, between.pValue() < 0.1 ? "%.1f" : "%.0f", 100 * between.pValue()));
  }

  private static String logits(double scale) {
    return Words.amount(scale, "logits");
  }

  /** Mean distance from the middle of a normal deviation, at the take of all grafts. */
  private double typical(AverageSeason season) {
    double take = verdict.tally().rate();
    return Math.sqrt(2 / Math.PI) * season.spread().value() * take * (1 - take);
  }

  private String dealt(DealtWithin dealt) {
    boolean sees = dealt.pValue() < 0.05;
    boolean differs =
        switch (verdict.verdict()) {
          case MATTERS, DIFFERS_UNSETTLED, LESS_THAN_YOU_CARE_ABOUT -> true;
          case NO_PRACTICAL_DIFFERENCE, DEPENDS_ON_CULTIVAR, CANT_TELL_YET, ENTANGLED -> false;
        };
    String agrees =
        verdict.verdict() == Verdict.DEPENDS_ON_CULTIVAR || sees == differs
            ? ""
            : sees
                ? " Unlike the verdict, it sees a difference: read it with care."
                : " Unlike the verdict, it sees no difference: read it with care.";
    return "A second opinion that supposes less (%s dealt out anew among %s grafts of the same %s): chance gives as much in %s of 100 deals.%s"
        .formatted(
            levels,
            Words.count(dealt.grafts()),
            columns(dealt.columns()),
            String.format(
                Locale.ROOT, dealt.pValue() < 0.1 ? "%.1f" : "%.0f", 100 * dealt.pValue()),
            agrees);
  }

  private static String columns(java.util.List<String> columns) {
    return Words.list(columns.stream().map(Words::column).toList());
  }
}
