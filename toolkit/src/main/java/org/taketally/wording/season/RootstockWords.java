package org.taketally.wording.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.Verdict;
import org.taketally.terms.Interval;
import org.taketally.wording.language.Phrases;

/** The verdict on rootstock as members read it. */
public final class RootstockWords {

  private final Phrases phrases;
  private final Takes takes;

  RootstockWords(Phrases phrases) {
    this.phrases = phrases;
    this.takes = new Takes(phrases);
  }

  /**
   * Heading.
   *
   * @return a question
   */
  public String heading() {
    return phrases.say("rootstock");
  }

  /**
   * That rootstocks can't be compared.
   *
   * @return a sentence
   */
  public String unsaid() {
    return phrases.say("rootstock.unsaid");
  }

  /**
   * The verdict with its question, among other points.
   *
   * @param answer with the stocks that may be named
   * @return a question and a sentence or two
   */
  public String point(FactorVerdict answer) {
    return phrases.say("rootstock.point", verdict(answer));
  }

  /**
   * The verdict.
   *
   * @param answer with the stocks that may be named
   * @return a sentence or two
   */
  public String verdict(FactorVerdict answer) {
    String margin = phrases.points(answer.options().margin());
    return switch (answer.verdict()) {
      case MATTERS -> phrases.say("rootstock.matters", standingOut(answer));
      case DIFFERS_UNSETTLED -> phrases.say("rootstock.unsettled", margin);
      case DEPENDS_ON_CULTIVAR -> phrases.say("rootstock.depends", margin);
      case NO_PRACTICAL_DIFFERENCE -> phrases.say("rootstock.no.difference", margin);
      case LESS_THAN_YOU_CARE_ABOUT -> phrases.say("rootstock.less", margin);
      case CANT_TELL_YET -> phrases.say("rootstock.cant.tell", margin);
      case ENTANGLED -> phrases.say("rootstock.entangled");
    };
  }

  private String standingOut(FactorVerdict answer) {
    List<String> parts = new ArrayList<>();
    String lower = named(answer, false);
    String higher = named(answer, true);
    if (!lower.isEmpty()) {
      parts.add(phrases.say("rootstock.lower", lower));
    }
    if (!higher.isEmpty()) {
      parts.add(phrases.say("rootstock.higher", higher));
    }
    return parts.isEmpty() ? phrases.say("rootstock.matters.some") : String.join(" ", parts);
  }

  /** Those that stand apart on one side of the middle of the others. */
  private String named(FactorVerdict answer, boolean above) {
    double middle =
        answer.levels().stream()
            .filter(level -> !level.standsOut())
            .flatMap(level -> level.take().stream())
            .mapToDouble(Estimate::value)
            .average()
            .orElseGet(() -> mean(answer));
    return phrases.list(
        answer.levels().stream()
            .filter(level -> level.standsOut() && level.take().isPresent())
            .filter(level -> level.take().orElseThrow().value() > middle == above)
            .map(
                level ->
                    phrases.say(
                        "rootstock.named",
                        level.level(),
                        takes.inTen(level.take().orElseThrow().value())))
            .toList());
  }

  private static double mean(FactorVerdict answer) {
    return answer.levels().stream()
        .flatMap(level -> level.take().stream())
        .mapToDouble(Estimate::value)
        .average()
        .orElse(0);
  }

  /**
   * What the verdict rests on: the widest gap with its range, how sure, what would have been seen.
   *
   * @param answer with the stocks that may be named; pairs with the widest gap first
   * @return sentences, a paragraph each
   */
  public List<String> reasons(FactorVerdict answer) {
    List<String> reasons = new ArrayList<>();
    if (answer.verdict() == Verdict.ENTANGLED) {
      reasons.add(phrases.say("rootstock.reason.entangled"));
      return reasons;
    }
    answer.size().ifPresent(size -> reasons.addAll(gaps(answer, size)));
    answer
        .detectable()
        .map(seen -> phrases.points(seen.smallestDifference()))
        .ifPresent(seen -> reasons.add(phrases.say("rootstock.reason.shown", seen)));
    if (answer.verdict() == Verdict.CANT_TELL_YET
        || answer.verdict() == Verdict.DIFFERS_UNSETTLED) {
      answer
          .detectable()
          .flatMap(seen -> seen.moreGrafts().stream().boxed().findFirst())
          .ifPresent(more -> reasons.add(phrases.say("rootstock.reason.more", more)));
    }
    return reasons;
  }

  /**
   * The point of the page in short, with the widest gap and how sure it is.
   *
   * @param answer with the stocks that may be named; pairs with the widest gap first
   * @return two sentences or more
   */
  public String pointWithReason(FactorVerdict answer) {
    List<String> said = new ArrayList<>(List.of(point(answer)));
    answer.size().ifPresent(size -> said.addAll(gaps(answer, size)));
    return String.join(" ", said);
  }

  /** The gap that tells the verdict, with the range by which it was reached. */
  private List<String> gaps(FactorVerdict answer, FactorVerdict.Size size) {
    Optional<FactorVerdict.Pair> telling = answer.telling();
    if (telling.isEmpty()) {
      return List.of();
    }
    FactorVerdict.Pair pair = telling.get();
    long grafts = answer.tally().grafts();
    String gap = phrases.points(pair.difference().value());
    String told =
        switch (answer.verdict()) {
          case NO_PRACTICAL_DIFFERENCE, LESS_THAN_YOU_CARE_ABOUT, CANT_TELL_YET -> {
            String about = phrases.aboutPoints(pair.difference().value());
            String most = phrases.points(Math.max(0.01, answer.atMost()));
            yield phrases.say(
                "rootstock.reason.at.most", grafts, pair.level(), pair.other(), about, most);
          }
          default -> {
            Interval range = pair.deciding(answer.options().margin()).interval();
            yield phrases.say(
                "rootstock.reason.widest",
                grafts,
                pair.level(),
                pair.other(),
                gap,
                phrases.points(range));
          }
        };
    return within(answer) ? List.of(told, sure(answer, size)) : List.of(told);
  }

  private static boolean within(FactorVerdict answer) {
    return answer.verdict() == Verdict.NO_PRACTICAL_DIFFERENCE
        || answer.verdict() == Verdict.LESS_THAN_YOU_CARE_ABOUT;
  }

  private String sure(FactorVerdict answer, FactorVerdict.Size size) {
    return phrases.say(
        "rootstock.reason.within",
        phrases.chance(size.probabilityWithinMargin()),
        phrases.points(answer.options().margin()));
  }

  /**
   * What the pairs are.
   *
   * @return a few words
   */
  public String pairs() {
    return phrases.say("rootstock.pairs");
  }

  /**
   * That the stock which stands out may not be named.
   *
   * @return a sentence
   */
  public String hidden() {
    return phrases.say("rootstock.hidden");
  }

  /**
   * That the reasons may not be given.
   *
   * @return a sentence
   */
  public String noReasons() {
    return phrases.say("rootstock.no.reasons");
  }

  /**
   * Caption of the table.
   *
   * @param merged how many stocks are counted together
   * @return a few words
   */
  public String caption(int merged) {
    return phrases.say("rootstock.caption") + takes.together(merged);
  }

  /**
   * Headings of the table.
   *
   * @return one per column
   */
  public List<String> headings() {
    return phrases.headings("rootstock.headings");
  }

  /**
   * A line of the table.
   *
   * @param rootstocks its stock, or those counted together
   * @param merged whether they are counted together
   * @param count grafts and takes
   * @param take all else equal; empty if it can't be given
   * @return one text per column
   */
  public List<String> row(
      List<String> rootstocks, boolean merged, TakeCount count, Optional<Estimate> take) {
    return List.of(
        takes.name("rootstock", rootstocks, merged), takes.cell(take), takes.took(count));
  }

  /**
   * What take doesn't say about stocks.
   *
   * @return a sentence
   */
  public String limits() {
    return phrases.say("rootstock.limits");
  }
}
