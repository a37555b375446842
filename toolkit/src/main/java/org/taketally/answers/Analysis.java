package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Interval;

/**
 * Every answer some records hold, from one fit; each missing one with its reason.
 *
 * @param fit the fit behind the answers
 * @param changes what had to be changed in the model asked for, in sentences; usually nothing
 * @param rootstock whether the compared column matters
 * @param difficulty how hard each cultivar is
 * @param whatMovesTake every factor on one scale
 * @param storage take against days of storage
 * @param grafters each grafter's take had all grafted the same mix
 * @param spreads likely range of each varying factor's standard deviation, logits, in the order of
 *     the fit
 * @param absent answers these records don't hold
 * @param options what was asked
 */
public record Analysis(
    TakeFit fit,
    List<String> changes,
    Optional<RootstockVerdict> rootstock,
    Optional<Difficulty> difficulty,
    WhatMovesTake whatMovesTake,
    Optional<StorageCurve> storage,
    Optional<Grafters> grafters,
    List<Interval> spreads,
    List<Absent> absent,
    AnswerOptions options) {

  public Analysis {
    changes = List.copyOf(changes);
    spreads = List.copyOf(spreads);
    absent = List.copyOf(absent);
  }

  /**
   * Fits the suggested model to records, and answers.
   *
   * @param records any records with assessed grafts
   * @param options margin, level, draws, seed
   * @return all answers
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   */
  public static Analysis of(GraftRecords records, AnswerOptions options) {
    TakeModel model = SuggestedModel.of(records).model();
    return of(CellsOf.records(records, SuggestedModel.needed(model)), model, options);
  }

  /**
   * Fits the model, or the nearest one the records can carry, and answers.
   *
   * @param cells the records
   * @param model what take may depend on
   * @param options margin, level, draws, seed
   * @return all answers
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   */
  public static Analysis of(Cells cells, TakeModel model, AnswerOptions options) {
    SturdyFit sturdy = SturdyFit.of(cells, model);
    return new Answering(sturdy.fit(), model.compared(), options).analysis(sturdy.changes());
  }

  /**
   * Answers from a fit.
   *
   * @param fit the fit
   * @param options margin, level, draws, seed
   * @return all answers
   */
  public static Analysis of(TakeFit fit, AnswerOptions options) {
    return new Answering(fit, fit.model().compared(), options).analysis(List.of());
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
    storage.ifPresent(answers::add);
    rootstock.flatMap(RootstockVerdict::pairings).ifPresent(answers::add);
    grafters.ifPresent(answers::add);
    rootstock.map(answer -> answer.type().entanglement()).ifPresent(answers::add);
    return answers;
  }
}
