package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.taketally.answers.Band;
import org.taketally.answers.Difficulty;
import org.taketally.answers.FactorVerdict;
import org.taketally.answers.StorageCurve;
import org.taketally.answers.WhatMovesTake;
import org.taketally.answers.WhatMovesTake.Kind;
import org.taketally.answers.WhatMovesTake.Mover;
import org.taketally.answers.Words;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;

/** Tips for next season, each following from an answer on the page; none is invented. */
final class NextSeason {

  private static final Set<String> NOT_A_CHOICE =
      Set.of(
          "season", "site", "grafter", "grafting_day", "block", "cultivar", "pairing", "rootstock");
  private static final int TREES = 10;

  private final PublicAnswers answers;
  private final List<String> tips = new ArrayList<>();

  private NextSeason(PublicAnswers answers) {
    this.answers = answers;
  }

  static Section of(PublicAnswers answers) {
    List<String> tips = new NextSeason(answers).tips();
    Block block =
        tips.isEmpty()
            ? new Paragraph("These records don't point to one change that would surely help.")
            : Bullets.of(tips);
    return new Section(
        "next-season",
        "For next season",
        List.of(
            block,
            new Paragraph(
                "Each tip follows from a result above. They are about take only, under conditions like"
                    + " these.")));
  }

  private List<String> tips() {
    answers.storage().ifPresent(this::storage);
    answers.movers().ifPresent(this::choices);
    answers.rootstock().ifPresent(this::rootstock);
    answers.difficulty().ifPresent(this::spares);
    answers.movers().ifPresent(this::hands);
    return tips;
  }

  private void storage(StorageCurve curve) {
    StorageWords.fallen(curve)
        .ifPresent(
            point ->
                tips.add(
                    "%s: stay under %s if you can; by then take was %s lower than at %s."
                        .formatted(
                            PlainWords.column(curve.column()),
                            Words.amount(point.value(), curve.unit()),
                            Words.points(
                                curve.points().get(0).take().value() - point.take().value()),
                            Words.amount(curve.points().get(0).value(), curve.unit()))));
  }

  private void choices(WhatMovesTake answer) {
    for (Mover mover : answer.movers()) {
      boolean clear = mover.span().low() > 0 && mover.span().value() >= answer.options().margin();
      boolean named = !mover.best().equals(PublicAnswers.NOT_SHOWN);
      boolean choice = mover.kind() == Kind.LEVELS && !NOT_A_CHOICE.contains(mover.factor());
      if (clear && named && choice) {
        tips.add(
            "%s: choose %s over %s where you can; it took %s better (likely %s), all else being equal."
                .formatted(
                    PlainWords.column(mover.factor()),
                    mover.best(),
                    mover.worst(),
                    Words.points(mover.span().value()),
                    Words.points(mover.span().interval())));
      }
    }
  }

  private void rootstock(FactorVerdict verdict) {
    switch (verdict.verdict()) {
      case NO_PRACTICAL_DIFFERENCE, LESS_THAN_YOU_CARE_ABOUT ->
          tips.add(
              "Choose rootstocks for soil, health and growth; for take it made no practical"
                  + " difference which of these you used.");
      case CANT_TELL_YET ->
          tips.add(
              "To find out about rootstocks, let the same person graft each cultivar on two or more of"
                  + " them on the same day, and write it down.");
      case ENTANGLED ->
          tips.add(
              "Mix rootstocks within cultivars, hands and days next time, so that they can be"
                  + " compared.");
      case MATTERS -> worstStock(verdict);
    }
  }

  private void worstStock(FactorVerdict verdict) {
    List<String> named =
        verdict.levels().stream()
            .filter(FactorVerdict.LevelTake::standsOut)
            .map(FactorVerdict.LevelTake::level)
            .toList();
    if (!named.isEmpty()) {
      tips.add(
          "Think twice before grafting on %s: its take stood apart from that of the other rootstocks."
              .formatted(Words.list(named)));
    }
  }

  private void spares(Difficulty difficulty) {
    difficulty.cultivars().stream()
        .filter(c -> c.band() == Band.HARD)
        .findFirst()
        .ifPresent(
            c ->
                tips.add(
                    "Plan spare grafts of the hard ones: for %d trees of %s you need about %d grafts on"
                            .formatted(
                                TREES, c.cultivar(), (long) Math.ceil(TREES / c.take().value()))
                        + " average, and more to be safe."));
  }

  private void hands(WhatMovesTake answer) {
    answers
        .hands()
        .filter(hands -> hands.low() > 0 && hands.value() >= answer.options().margin() / 2)
        .ifPresent(
            hands ->
                tips.add(
                    "Practise and compare hands: changing the person typically moved take by %s (likely"
                            .formatted(Words.points(hands.value()))
                        + " %s).".formatted(Words.points(hands.interval()))));
  }
}
