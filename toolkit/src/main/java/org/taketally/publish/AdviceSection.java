package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.advice.Advice;
import org.taketally.answers.advice.Advice.CompareHands;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.Advice.UseWithin;
import org.taketally.answers.advice.NoAdvice;
import org.taketally.answers.advice.NoAdvice.Reason;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.wording.Words;

/** What to do differently next season, each piece with its gain, how sure and from how many. */
final class AdviceSection {

  private static final int TREES = 10;

  private final PublicAnswers answers;
  private final SeasonAdvice advice;

  private AdviceSection(PublicAnswers answers) {
    this.answers = answers;
    this.advice = answers.advice();
  }

  static Section of(PublicAnswers answers) {
    return new Section("next-season", "For next season", new AdviceSection(answers).blocks());
  }

  private List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    if (advice.steps().isEmpty()) {
      blocks.add(new Paragraph("These records don't point to one change that would surely help."));
    } else {
      blocks.add(new Table(steps()));
    }
    nothingAdvised().forEach(sentence -> blocks.add(new Paragraph(sentence)));
    spares().ifPresent(sentence -> blocks.add(new Paragraph(sentence)));
    blocks.add(
        new Paragraph(
            "All this is about take only, under conditions like these. What went with a better take"
                + " need not be what caused it."));
    return blocks;
  }

  private Grid steps() {
    return new Grid(
        "What to do differently",
        List.of("Do differently", "Gain in take", "How sure", "From"),
        advice.steps().stream().map(AdviceSection::row).toList(),
        true);
  }

  private static List<String> row(Advice step) {
    return List.of(
        what(step),
        "%s (likely %s)"
            .formatted(Words.points(step.gain().value()), Words.points(step.gain().interval())),
        Words.chance(step.sure()) + " sure",
        Words.count(step.grafts(), "graft"));
  }

  private static String what(Advice step) {
    if (step instanceof PreferLevels prefer) {
      return levels(prefer);
    }
    if (step instanceof UseWithin use) {
      return "Use budwood within %s of cutting: until then take stays near its best (%s); after %s it is %s"
          .formatted(
              Words.amount(use.within(), use.unit()),
              Words.percent(use.takeWithin().value()),
              Words.amount(use.beyond(), use.unit()),
              Words.percent(use.takeBeyond().value()));
    }
    CompareHands hands = (CompareHands) step;
    return "Work beside each other and compare: the takes of %d people typically lie so far apart"
        .formatted(hands.hands());
  }

  private static String levels(PreferLevels prefer) {
    String rather = either(prefer.rather());
    String than = either(prefer.than());
    return prefer.factor().equals("rootstock")
        ? "Where you can choose, graft on %s rather than on %s".formatted(rather, than)
        : "%s: where you can choose, %s rather than %s"
            .formatted(PlainWords.column(prefer.factor()), rather, than);
  }

  private static String either(List<String> names) {
    int last = names.size() - 1;
    return last == 0
        ? names.get(0)
        : String.join(", ", names.subList(0, last)) + " or " + names.get(last);
  }

  private List<String> nothingAdvised() {
    List<String> sentences = new ArrayList<>();
    for (Reason reason : Reason.values()) {
      List<String> columns =
          advice.none().stream()
              .filter(none -> none.reason() == reason)
              .filter(none -> !none.factor().equals(SeasonFacts.GRAFTER))
              .map(NoAdvice::factor)
              .map(Words::column)
              .toList();
      if (!columns.isEmpty()) {
        sentences.add(because(reason, Words.sentence(Words.list(columns))));
      }
    }
    return sentences;
  }

  private static String because(Reason reason, String columns) {
    return switch (reason) {
      case NO_PRACTICAL_DIFFERENCE ->
          columns
              + ": whichever of those here you use, take is much the same; choose by soil, health,"
              + " growth and cost.";
      case NOT_SURE ->
          columns + ": no difference sure enough, or large enough, to advise anything.";
      case NOT_COMPARED ->
          columns
              + ": hardly used beside each other by the same people, on the same cultivars and"
              + " days, so nothing can be advised. Let the same person use both on one day, and"
              + " write it down.";
      case HANDS_NOT_RECORDED ->
          columns
              + ": the records don't say who grafted, so what a hand does can't be told from what"
              + " it used, and nothing is advised.";
      case WITHHELD -> columns + ": not said here, because it would tell on too few people.";
    };
  }

  private Optional<String> spares() {
    return answers.difficulty().stream()
        .flatMap(difficulty -> difficulty.cultivars().stream())
        .filter(c -> c.band() == Band.HARD)
        .findFirst()
        .map(AdviceSection::spare);
  }

  private static String spare(CultivarTake c) {
    return "Plan spare grafts of the hard ones: for %d trees of %s you need about %d grafts on average, and more to be safe."
        .formatted(TREES, c.cultivar(), (long) Math.ceil(TREES / c.take().value()));
  }
}
