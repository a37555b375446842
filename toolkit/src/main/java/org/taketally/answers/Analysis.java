package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.Assessments;
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
 * @param fitChecks whether the model fits; empty for very large records, see {@code absent}
 * @param beside answers that take more than the records and the model
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
    Optional<FitChecks> fitChecks,
    Beside beside,
    List<Interval> spreads,
    List<Absent> absent,
    AnswerOptions options) {

  public Analysis {
    changes = List.copyOf(changes);
    spreads = List.copyOf(spreads);
    absent = List.copyOf(absent);
  }

  /**
   * Answers that take more than the records and the model: a second file, time, or a price.
   *
   * @param lateLoss early take, final take and what is lost between them
   * @param secondOpinions whether another way of predicting does better
   * @param marginCost what a drop in take costs
   */
  public record Beside(
      Optional<LateLoss> lateLoss,
      Optional<SecondOpinions> secondOpinions,
      Optional<MarginCost> marginCost) {

    static final Beside NOTHING = new Beside(Optional.empty(), Optional.empty(), Optional.empty());
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
   * With early take, final take and late loss from repeated counts.
   *
   * @param records the records analysed
   * @param assessments counts that belong to them
   * @return the analysis with the answer, or with the reason why there is none
   */
  public Analysis withLateLoss(GraftRecords records, Assessments assessments) {
    Optional<LateLoss> loss = LateLoss.of(records, assessments, options);
    Beside more = new Beside(loss, beside.secondOpinions(), beside.marginCost());
    return loss.isPresent()
        ? with(more, answered(LateLoss.QUESTION))
        : with(
            more,
            unanswered(
                LateLoss.QUESTION, "No row that had a living graft was counted more than once."));
  }

  /**
   * With other ways of predicting, each judged on seasons it has not seen. Takes about as long as
   * all other answers together.
   *
   * @return the analysis with the answer
   */
  public Analysis withSecondOpinions() {
    SecondOpinions opinions = SecondOpinions.of(fit, options);
    return with(
        new Beside(beside.lateLoss(), Optional.of(opinions), beside.marginCost()),
        answered(SecondOpinions.QUESTION));
  }

  /**
   * With what a drop in take by the margin costs, at the take counted in the records.
   *
   * @param costPerGraft cost of one graft made, in the user's money, above 0
   * @param pricePerTree what a saleable tree brings, above 0; empty if not said
   * @return the analysis with the answer, or with the reason why there is none
   */
  public Analysis withCost(double costPerGraft, OptionalDouble pricePerTree) {
    double take = Counted.all(fit.cells()).rate();
    if (take <= options.margin()) {
      return with(
          beside,
          unanswered(
              MarginCost.QUESTION,
              "Take is %s, so it can't drop by %s; ask with a smaller margin."
                  .formatted(Words.percent(take), Words.points(options.margin()))));
    }
    MarginCost cost = new MarginCost(costPerGraft, take, 0, options.margin(), pricePerTree);
    return with(
        new Beside(beside.lateLoss(), beside.secondOpinions(), Optional.of(cost)),
        answered(MarginCost.QUESTION));
  }

  private List<Absent> answered(String question) {
    return absent.stream().filter(missing -> !missing.question().equals(question)).toList();
  }

  private List<Absent> unanswered(String question, String reason) {
    List<Absent> missing = new ArrayList<>(answered(question));
    missing.add(new Absent(question, reason));
    return missing;
  }

  private Analysis with(Beside more, List<Absent> missing) {
    return new Analysis(
        fit,
        changes,
        rootstock,
        difficulty,
        whatMovesTake,
        storage,
        grafters,
        fitChecks,
        more,
        spreads,
        missing,
        options);
  }

  /**
   * All answers, the headline question first.
   *
   * @return at least one
   */
  public List<Answer> answers() {
    List<Answer> answers = new ArrayList<>();
    rootstock.ifPresent(answers::add);
    beside.marginCost().ifPresent(answers::add);
    difficulty.ifPresent(answers::add);
    answers.add(whatMovesTake);
    storage.ifPresent(answers::add);
    beside.lateLoss().ifPresent(answers::add);
    rootstock.flatMap(RootstockVerdict::pairings).ifPresent(answers::add);
    grafters.ifPresent(answers::add);
    rootstock.map(answer -> answer.type().entanglement()).ifPresent(answers::add);
    fitChecks.ifPresent(answers::add);
    beside.secondOpinions().ifPresent(answers::add);
    return answers;
  }
}
