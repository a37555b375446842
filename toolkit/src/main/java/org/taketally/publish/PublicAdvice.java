package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.advice.Advice;
import org.taketally.answers.advice.Advice.CompareHands;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.Advice.UseWithin;
import org.taketally.answers.advice.NoAdvice;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.publish.privacy.GraftsByMember;
import org.taketally.records.columns.RecordColumn;

/** Advice without levels behind which too few people stand. */
final class PublicAdvice {

  private final SeasonFacts facts;
  private final Optional<TakeCurve> curve;

  PublicAdvice(SeasonFacts facts, Optional<TakeCurve> curve) {
    this.facts = facts;
    this.curve = curve;
  }

  SeasonAdvice of(SeasonAdvice whole) {
    List<Advice> kept = new ArrayList<>();
    List<NoAdvice> none = new ArrayList<>(whole.none());
    for (Advice step : whole.steps()) {
      shown(step)
          .ifPresentOrElse(
              kept::add, () -> none.add(new NoAdvice(step.factor(), NoAdvice.Reason.WITHHELD)));
    }
    return new SeasonAdvice(kept, none);
  }

  private Optional<Advice> shown(Advice step) {
    if (step instanceof PreferLevels prefer) {
      return levels(prefer);
    }
    if (step instanceof UseWithin use) {
      return curve.filter(c -> within(c, use)).map(c -> use);
    }
    CompareHands hands = (CompareHands) step;
    return hands.hands() >= facts.options().rule().members() ? Optional.of(step) : Optional.empty();
  }

  private static boolean within(TakeCurve curve, UseWithin use) {
    List<TakeCurve.Point> points = curve.points();
    return points.get(0).value() <= use.within()
        && use.beyond() <= points.get(points.size() - 1).value();
  }

  private Optional<Advice> levels(PreferLevels prefer) {
    List<String> rather = shown(prefer.factor(), prefer.rather());
    List<String> than = shown(prefer.factor(), prefer.than());
    return rather.isEmpty() || than.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new PreferLevels(
                prefer.factor(), rather, than, prefer.gain(), prefer.sure(), prefer.grafts()));
  }

  private List<String> shown(String factor, List<String> levels) {
    if (factor.equals(RecordColumn.ROOTSTOCK.columnName())) {
      return facts.rootstockTable().stream()
          .flatMap(table -> levels.stream().filter(table.shown()::contains))
          .toList();
    }
    GraftsByMember evidence = facts.evidence(List.of(factor));
    return levels.stream()
        .filter(level -> evidence.allows(evidence.level(factor, level), facts.options().rule()))
        .toList();
  }
}
