package org.taketally.wording;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import org.taketally.answers.Estimate;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;

/** {@link LateLoss} in plain words. */
final class LateLossWords implements AnswerWords {

  /** Common practice, no source: from this share of late starters on a level is said to be slow. */
  private static final double SLOW_FROM = 0.10;

  private static final int MOST_NAMED = 3;

  /** Ranges a fifth wider. */
  private static final double TOGETHER_FROM = 1.44;

  private final LateLoss answer;

  LateLossWords(LateLoss answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    LevelLoss all = answer.all();
    return "Early take %s, final take %s: of %s once alive, about %s (likely %s) were lost by %d days after the first count%s."
        .formatted(
            Words.percent(all.early().rate()),
            Words.percent(all.last().rate()),
            Words.count(all.onceAlive(), "graft"),
            Words.percent(all.lateLoss().value()),
            Words.percents(all.lateLoss().interval()),
            answer.rounds().get(answer.rounds().size() - 1).middle(),
            slowStocks());
  }

  /** Stocks that an early count would wrong. */
  private String slowStocks() {
    List<String> slow =
        answer.factors().stream()
            .filter(factor -> factor.factor().equals("rootstock"))
            .flatMap(factor -> factor.levels().stream())
            .filter(LateLossWords::isSlow)
            .map(LevelLoss::name)
            .sorted()
            .toList();
    return slow.isEmpty()
        ? ""
        : "; on %s grafts start slowly: go by the final take there".formatted(Words.list(slow));
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    lines.add(earlyAndFinal(answer.all()));
    answer.factors().forEach(factor -> lines.addAll(sentences(factor)));
    lines.add(counting());
    if (answer.dispersion() > TOGETHER_FROM) {
      lines.add(
          "Grafts of one row often died together: ranges are about %s times as wide as if they had been lost one by one."
              .formatted(number(Math.sqrt(answer.dispersion()))));
    }
    if (answer.all().hiddenAtMost() > 0) {
      lines.add(
          "In a row of several grafts one that starts late can hide one that is lost meanwhile: losses are at least as counted, at most %s more."
              .formatted(Words.count(answer.all().hiddenAtMost())));
    }
    return lines;
  }

  private static String earlyAndFinal(LevelLoss all) {
    String takes =
        "Early take is what was alive at the first count (%s of %s), final take at the last (%s)."
            .formatted(
                Words.count(all.early().takes()),
                Words.count(all.early().grafts(), "graft"),
                Words.count(all.last().takes()));
    return all.lateStarters() == 0
        ? takes
        : takes
            + " %s started late: not seen alive at the first count, but later."
                .formatted(Words.count(all.lateStarters()));
  }

  private static List<String> sentences(FactorLoss factor) {
    List<String> lines = new ArrayList<>();
    LevelLoss worst = factor.levels().get(0);
    LevelLoss best = factor.levels().get(factor.levels().size() - 1);
    lines.add(
        "%s: as counted, late loss ran from %s (%s) to %s (%s). %s"
            .formatted(
                Words.sentence(Words.column(factor.factor())),
                Words.percent(best.lateLoss().value()),
                best.name(),
                Words.percent(worst.lateLoss().value()),
                worst.name(),
                factor.differ() ? differs(factor) : notShown(factor)));
    factor.levels().stream().filter(LateLossWords::isSlow).forEach(level -> lines.add(slow(level)));
    return lines;
  }

  private static String allowedFor(FactorLoss factor) {
    return factor.within().isEmpty()
        ? ""
        : ", " + Words.list(factor.within().stream().map(Words::column).toList()) + " allowed for";
  }

  /** Names those lost faster for sure, fastest first. */
  private static String differs(FactorLoss factor) {
    List<String> faster =
        factor.levels().stream()
            .filter(level -> level.timesAsFast().map(times -> times.low() > 1).orElse(false))
            .sorted(
                Comparator.comparingDouble(
                    level -> -level.timesAsFast().map(Estimate::value).orElseThrow()))
            .limit(MOST_NAMED)
            .map(
                level ->
                    level.name() + " " + times(level.timesAsFast().orElseThrow(), factor.base()))
            .toList();
    String differ = "That is more than chance would part them%s".formatted(allowedFor(factor));
    return faster.isEmpty()
        ? differ + "."
        : differ + "; lost fastest: " + String.join(", ", faster) + ".";
  }

  private static String times(Estimate times, String base) {
    return "(%s times as fast as %s, likely %s to %s)"
        .formatted(number(times.value()), base, number(times.low()), number(times.high()));
  }

  private static String notShown(FactorLoss factor) {
    String notShown = "That is no more than chance would part them%s".formatted(allowedFor(factor));
    DoubleSummaryStatistics reach =
        factor.levels().stream()
            .flatMap(level -> level.timesAsFast().stream())
            .flatMapToDouble(times -> DoubleStream.of(times.low(), times.high()))
            .summaryStatistics();
    return reach.getCount() == 0
        ? notShown + "."
        : notShown
            + "; they may still be lost %s to %s times as fast as %s."
                .formatted(number(reach.getMin()), number(reach.getMax()), factor.base());
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private static boolean isSlow(LevelLoss level) {
    return level.lateStarters() >= SLOW_FROM * level.onceAlive() && level.lateStarters() > 0;
  }

  private static String slow(LevelLoss level) {
    return "%s starts slowly: %s of its %s were not seen alive at the first count. Judge it by the final take (%s), not the early one (%s)."
        .formatted(
            level.name(),
            Words.count(level.lateStarters()),
            Words.count(level.onceAlive(), "living graft"),
            Words.percent(level.last().rate()),
            Words.percent(level.early().rate()));
  }

  private static String span(long from, long to) {
    return from == to ? String.valueOf(from) : from + " to " + to;
  }

  private String counting() {
    List<String> spans =
        answer.rounds().stream().map(round -> span(round.from(), round.to())).toList();
    String first =
        "First counts were %s days after grafting, later ones %s days after the first."
            .formatted(span(answer.firstFrom(), answer.firstTo()), Words.list(spans));
    String rough =
        answer.roundsApart()
            ? ""
            : " Counts were not made in rounds, so the share lost by a given day is rough.";
    String once =
        answer.countedOnce() == 0
            ? ""
            : " %s in rows counted only once are left out."
                .formatted(Words.count(answer.countedOnce(), "graft"));
    return first + rough + once;
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(
        LateLossTables.levels(answer), LateLossTables.curves(answer), LateLossTables.tests(answer));
  }
}
