package org.taketally.analysis;

import java.util.Optional;
import java.util.function.Function;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.answers.batches.LevelAgainstOthers;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.BlockTakes;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.prediction.SecondOpinions;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.verdict.MarginCost;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.RootstockVerdict;

/**
 * The register of answers: one line each, in the order they are shown. Its words are registered in
 * {@code wording.Wording}, its figures in {@code figure.AnswerFigures}; a test walks all three.
 */
public enum AnswerRegister {
  LEVEL_APART(
      Question.LEVEL_APART,
      LevelAgainstOthers.class,
      "levelAgainstOthers",
      AnswerFinder::onlyIfNamed),
  ROOTSTOCK(Question.DOES_IT_MATTER, RootstockVerdict.class, "rootstock", AnswerFinder::rootstock),
  CONTRASTS(Question.CONTRASTS, PlannedContrasts.class, "contrasts", AnswerFinder::onlyIfPlanned),
  MARGIN_COST(Question.MARGIN_COST, MarginCost.class, "marginCost", AnswerFinder::onlyIfPriced),
  DIFFICULTY(Question.DIFFICULTY, Difficulty.class, "difficulty", AnswerFinder::difficulty),
  IMPORTANCE(
      Question.IMPORTANCE, FactorImportance.class, "whatMovesTake", AnswerFinder::importance),
  STORAGE(Question.CURVE, TakeCurve.class, "storageCurve", AnswerFinder::storage),
  LATE_LOSS(Question.LATE_LOSS, LateLoss.class, "lateLoss", AnswerFinder::onlyIfCountedAgain),
  PAIRINGS(Question.PAIRINGS, Pairings.class, "pairings", AnswerFinder::pairings),
  GRAFTERS(Question.GRAFTERS, Grafters.class, "grafters", AnswerFinder::grafters),
  BLOCKS(Question.BLOCKS, BlockTakes.class, "blocks", AnswerFinder::onlyIfInBlocks),
  CONFOUNDING(Question.CONFOUNDING, Confounding.class, "entanglement", AnswerFinder::confounding),
  FIT_CHECKS(Question.FIT, FitChecks.class, "fitChecks", AnswerFinder::fitChecks),
  SECOND_OPINIONS(
      Question.SECOND_OPINIONS,
      SecondOpinions.class,
      "secondOpinions",
      AnswerFinder::onlyIfAskedFor);

  private final Question question;
  private final Class<? extends Answer> kind;
  private final String key;

  @SuppressWarnings("ImmutableEnumChecker") // references to methods, without state
  private final Function<AnswerFinder, Optional<? extends Answer>> finder;

  AnswerRegister(
      Question question,
      Class<? extends Answer> kind,
      String key,
      Function<AnswerFinder, Optional<? extends Answer>> finder) {
    this.question = question;
    this.kind = kind;
    this.key = key;
    this.finder = finder;
  }

  /**
   * The question it answers.
   *
   * @return another one for each line
   */
  public Question question() {
    return question;
  }

  /**
   * Where its values are.
   *
   * @return a record
   */
  public Class<? extends Answer> kind() {
    return kind;
  }

  /**
   * Its key in JSON.
   *
   * @return camel case
   */
  public String key() {
    return key;
  }

  Optional<? extends Answer> find(AnswerFinder among) {
    return finder.apply(among);
  }

  /**
   * Where an answer is registered.
   *
   * @param answer any answer
   * @return its line; empty for answers that belong to another, such as a verdict on one column
   */
  public static Optional<AnswerRegister> of(Answer answer) {
    for (AnswerRegister line : values()) {
      if (line.kind.isInstance(answer)) {
        return Optional.of(line);
      }
    }
    return Optional.empty();
  }
}
