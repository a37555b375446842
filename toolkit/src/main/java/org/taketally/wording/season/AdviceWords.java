package org.taketally.wording.season;

import java.util.List;
import java.util.OptionalInt;
import org.taketally.answers.advice.Advice;
import org.taketally.answers.advice.Advice.CompareHands;
import org.taketally.answers.advice.Advice.PreferLevels;
import org.taketally.answers.advice.Advice.UseWithin;
import org.taketally.answers.advice.NoAdvice.Reason;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.wording.language.Phrases;

/** What to do differently next season, each piece with its gain, how sure and from how many. */
public final class AdviceWords {

  private static final int TREES = 10;

  private final Phrases phrases;
  private final Takes takes;

  AdviceWords(Phrases phrases) {
    this.phrases = phrases;
    this.takes = new Takes(phrases);
  }

  /**
   * Heading.
   *
   * @return a few words
   */
  public String heading() {
    return phrases.say("advice");
  }

  /**
   * That nothing is advised.
   *
   * @return a sentence
   */
  public String none() {
    return phrases.say("advice.none");
  }

  /**
   * Caption of the table of steps.
   *
   * @return a few words
   */
  public String caption() {
    return phrases.say("advice.caption");
  }

  /**
   * Headings of the table of steps.
   *
   * @return one per column
   */
  public List<String> headings() {
    return phrases.headings("advice.headings");
  }

  /**
   * A step as a line of the table.
   *
   * @param step what to do differently
   * @return one text per column
   */
  public List<String> row(Advice step) {
    return List.of(
        what(step),
        phrases.say(
            "advice.gain",
            phrases.points(step.gain().value()),
            phrases.points(step.gain().interval())),
        phrases.say("advice.sure", phrases.chance(step.sure())),
        phrases.say("advice.grafts", step.grafts()));
  }

  /**
   * A step in a sentence or two.
   *
   * @param step what to do differently
   * @return with its gain, how sure, and from how many grafts
   */
  public String step(Advice step) {
    List<String> row = row(step);
    return phrases.say("handout.step", row.get(0) + ".", row.get(1), row.get(2), row.get(3));
  }

  private String what(Advice step) {
    if (step instanceof PreferLevels prefer) {
      return levels(prefer);
    }
    if (step instanceof UseWithin use) {
      return phrases.say(
          "advice.use",
          phrases.amount(use.within(), use.unit()),
          phrases.percent(use.takeWithin().value()),
          phrases.amount(use.beyond(), use.unit()),
          phrases.percent(use.takeBeyond().value()));
    }
    return phrases.say("advice.hands", ((CompareHands) step).hands());
  }

  private String levels(PreferLevels prefer) {
    String rather = either(prefer.factor(), prefer.rather());
    String than = either(prefer.factor(), prefer.than());
    return prefer.factor().equals("rootstock")
        ? phrases.say("advice.rootstock", rather, than)
        : phrases.say("advice.levels", takes.column(prefer.factor()), rather, than);
  }

  private String either(String factor, List<String> levels) {
    return phrases.either(levels.stream().map(level -> phrases.level(factor, level)).toList());
  }

  /**
   * Why nothing is advised about some columns.
   *
   * @param reason the same for all of them
   * @param columns of the records, at least one
   * @return a sentence or two
   */
  public String nothingAdvised(Reason reason, List<String> columns) {
    String names = phrases.sentence(phrases.list(columns.stream().map(phrases::column).toList()));
    return switch (reason) {
      case NO_PRACTICAL_DIFFERENCE ->
          phrases.say(
              columns.equals(List.of("rootstock"))
                  ? "advice.no.difference.rootstock"
                  : "advice.no.difference",
              names);
      case NOT_SURE -> phrases.say("advice.not.sure", names);
      case NOT_COMPARED -> phrases.say("advice.not.compared", names);
      case HANDS_NOT_RECORDED -> phrases.say("advice.no.hands", names);
      case WITHHELD -> phrases.say("advice.withheld", names);
    };
  }

  /**
   * How many grafts of a hard cultivar a few trees take.
   *
   * @param cultivar a hard one
   * @param enough grafts enough in 9 of 10 seasons; empty if unknown, which leaves the average
   * @return a sentence
   */
  public String spare(CultivarTake cultivar, OptionalInt enough) {
    return enough.isPresent()
        ? phrases.say("advice.spare.enough", TREES, cultivar.cultivar(), enough.getAsInt())
        : phrases.say(
            "advice.spare",
            TREES,
            cultivar.cultivar(),
            (long) Math.ceil(TREES / cultivar.take().value()));
  }

  /**
   * What the advice doesn't say.
   *
   * @return two sentences
   */
  public String limits() {
    return phrases.say("advice.limits");
  }
}
