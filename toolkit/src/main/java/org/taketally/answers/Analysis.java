package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.terms.Interval;

/**
 * Every answer some records hold, from one fit; each missing one with its reason.
 *
 * @param fit the fit behind the answers
 * @param difficulty how hard each cultivar is
 * @param rootstock whether the compared column matters
 * @param whatMovesTake every factor on one scale
 * @param spreads likely range of each varying factor's standard deviation, logits, in the order of
 *     the fit
 * @param absent answers these records don't hold
 * @param options what was asked
 */
public record Analysis(
    TakeFit fit,
    Optional<Difficulty> difficulty,
    Optional<RootstockVerdict> rootstock,
    WhatMovesTake whatMovesTake,
    List<Interval> spreads,
    List<Absent> absent,
    AnswerOptions options) {

  public Analysis {
    spreads = List.copyOf(spreads);
    absent = List.copyOf(absent);
  }

  /**
   * Fits the model and answers.
   *
   * @param cells the records
   * @param model what take may depend on
   * @param options margin, level, draws, seed
   * @return all answers
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   */
  public static Analysis of(Cells cells, TakeModel model, AnswerOptions options) {
    return of(model.fit(cells), options);
  }

  /**
   * Answers from a fit.
   *
   * @param fit the fit
   * @param options margin, level, draws, seed
   * @return all answers
   */
  public static Analysis of(TakeFit fit, AnswerOptions options) {
    Averaging averaging = new Averaging(fit, options);
    List<Absent> absent = new ArrayList<>();
    Optional<Difficulty> difficulty = Optional.empty();
    if (averaging.knows("cultivar")) {
      difficulty = Optional.of(Difficulties.of(averaging, options));
    } else {
      absent.add(new Absent("Which cultivars are hard to get to take?", noLevels(fit, "cultivar")));
    }
    Optional<RootstockVerdict> rootstock = Optional.empty();
    String compared = fit.model().compared().orElse("rootstock");
    if (averaging.knows(compared)) {
      rootstock = Optional.of(RootstockVerdicts.of(averaging, compared, options));
    } else {
      absent.add(
          new Absent(
              "Does the %s matter?".formatted(Words.column(compared)), noLevels(fit, compared)));
    }
    return new Analysis(
        fit,
        difficulty,
        rootstock,
        Movers.of(averaging, options),
        spreads(averaging, options),
        absent,
        options);
  }

  private static List<Interval> spreads(Averaging averaging, AnswerOptions options) {
    double[][] sds =
        IntStream.range(0, averaging.count())
            .mapToObj(averaging.draws()::sds)
            .toArray(double[][]::new);
    return IntStream.range(0, averaging.fit().varying().size())
        .mapToObj(
            k -> aroundFit(averaging, k, Samples.range(Samples.column(sds, k), options.level())))
        .toList();
  }

  /** A spread estimated as zero lies below every draw; the range then starts at the estimate. */
  private static Interval aroundFit(Averaging averaging, int k, Interval range) {
    double estimate = averaging.fit().varying().get(k).standardDeviation();
    return new Interval(
        Math.min(range.low(), estimate), Math.max(range.high(), estimate), range.level());
  }

  private static String noLevels(TakeFit fit, String column) {
    String what = Words.column(column);
    return fit.cells()
        .findFactor(column)
        .filter(f -> f.size() == 1)
        .map(
            f ->
                "These records hold only one %s (%s): there is nothing to compare it with."
                    .formatted(what, f.levels().get(0)))
        .orElse(
            "The model leaves %s out; name it in the model to have it compared.".formatted(what));
  }

  /**
   * All answers, the headline question first.
   *
   * @return at least one
   */
  public List<Answer> answers() {
    List<Answer> answers = new ArrayList<>();
    rootstock.ifPresent(answers::add);
    difficulty.ifPresent(answers::add);
    answers.add(whatMovesTake);
    return answers;
  }
}
