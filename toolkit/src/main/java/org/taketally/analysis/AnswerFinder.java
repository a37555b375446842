package org.taketally.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.Question;
import org.taketally.answers.Unanswered;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.batches.LevelAgainstOthers;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.checks.FitChecksCalculator;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.BlockTakes;
import org.taketally.answers.counts.BlockTakesCalculator;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.DifficultyCalculator;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportanceCalculator;
import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.GraftersCalculator;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurveCalculator;
import org.taketally.answers.prediction.SecondOpinions;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.MarginCost;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.answers.verdict.RootstockVerdictCalculator;
import org.taketally.cells.Factor;
import org.taketally.model.TakeFit;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Interval;

/**
 * Finds answers from one fit and one set of draws, several at a time, and says why there is none to
 * some questions.
 */
final class AnswerFinder {

  private static final String ROOTSTOCK = RecordColumn.ROOTSTOCK.columnName();
  private static final String CULTIVAR = RecordColumn.CULTIVAR.columnName();
  private static final String STORAGE = DerivedColumn.STORAGE_DAYS.columnName();

  /** Above this the checks, which look at each cell many times, would double the time. */
  private static final int CHECKED_CELLS = 1_000_000;

  private final TakeFit fit;
  private final Optional<String> compared;
  private final AnswerOptions options;
  private final MarginalTakes averaging;
  private final Optional<RootstockVerdict> rootstock;
  private final List<Unanswered> unanswered = new ArrayList<>();

  /** What was found for a line of the register. */
  record Found(Optional<? extends Answer> answer, List<Unanswered> unanswered) {}

  AnswerFinder(TakeFit fit, Optional<String> compared, AnswerOptions options) {
    this.fit = fit;
    this.compared = compared;
    this.options = options;
    this.averaging = MarginalTakes.of(fit, options);
    this.rootstock = verdict(compared.orElse(ROOTSTOCK));
  }

  /** For one line of the register, with reasons of its own. */
  private AnswerFinder(AnswerFinder shared) {
    this.fit = shared.fit;
    this.compared = shared.compared;
    this.options = shared.options;
    this.averaging = shared.averaging;
    this.rootstock = shared.rootstock;
  }

  /** The answer of a line of the register, or why there is none. Safe from several threads. */
  Found find(Function<AnswerFinder, Optional<? extends Answer>> line) {
    AnswerFinder own = new AnswerFinder(this);
    Optional<? extends Answer> answer = line.apply(own);
    return new Found(answer, own.unanswered);
  }

  private Optional<RootstockVerdict> verdict(String column) {
    if (averaging.knows(column)) {
      return Optional.of(RootstockVerdictCalculator.of(averaging, column, options));
    }
    return levelsMet(column) > 1 && compared.isPresent() && leftOutByTheFit(column)
        ? Optional.of(RootstockVerdictCalculator.refused(fit.cells(), column, options))
        : Optional.empty();
  }

  /** The fit may have had to leave out the column in question: that is an answer too. */
  private boolean leftOutByTheFit(String column) {
    return fit.model().compared().filter(column::equals).isEmpty();
  }

  Optional<RootstockVerdict> rootstock() {
    if (rootstock.isEmpty()) {
      lacks(Question.DOES_IT_MATTER, compared.orElse(ROOTSTOCK));
    }
    return rootstock;
  }

  Optional<Pairings> pairings() {
    return rootstock.flatMap(RootstockVerdict::pairings);
  }

  Optional<Confounding> confounding() {
    return rootstock.map(verdict -> verdict.type().confounding());
  }

  Optional<Difficulty> difficulty() {
    if (averaging.knows(CULTIVAR)) {
      return Optional.of(DifficultyCalculator.of(averaging, options));
    }
    lacks(Question.DIFFICULTY, CULTIVAR);
    return Optional.empty();
  }

  Optional<FactorImportance> importance() {
    List<FactorVerdict> verdicts =
        rootstock.stream()
            .flatMap(r -> Stream.concat(Stream.of(r.type()), r.condition().stream()))
            .toList();
    return Optional.of(
        new ImportanceBesideVerdicts(verdicts)
            .of(FactorImportanceCalculator.of(averaging, options)));
  }

  Optional<TakeCurve> storage() {
    if (averaging.knows(STORAGE) && fit.cells().findMeasure(STORAGE).isPresent()) {
      return Optional.of(TakeCurveCalculator.of(averaging, options, STORAGE));
    }
    unanswered.add(new Unanswered(Question.CURVE, STORAGE, Unanswered.Cause.NUMBER_NOT_IN_MODEL));
    return Optional.empty();
  }

  Optional<Grafters> grafters() {
    if (averaging.knows(GrafterLabels.GRAFTER)) {
      return Optional.of(GraftersCalculator.of(averaging, options));
    }
    lacks(Question.GRAFTERS, GrafterLabels.GRAFTER);
    return Optional.empty();
  }

  Optional<FitChecks> fitChecks() {
    if (fit.cells().size() <= CHECKED_CELLS) {
      return Optional.of(FitChecksCalculator.of(averaging, options));
    }
    unanswered.add(Unanswered.of(Question.FIT, Unanswered.Cause.TOO_MANY_CELLS));
    return Optional.empty();
  }

  Optional<LateLoss> onlyIfCountedAgain() {
    unanswered.add(Unanswered.of(Question.LATE_LOSS, Unanswered.Cause.COUNTED_ONCE));
    return Optional.empty();
  }

  Optional<SecondOpinions> onlyIfAskedFor() {
    unanswered.add(Unanswered.of(Question.SECOND_OPINIONS, Unanswered.Cause.NOT_ASKED));
    return Optional.empty();
  }

  /** Without a plan nothing is missed. */
  Optional<PlannedContrasts> onlyIfPlanned() {
    return Optional.empty();
  }

  /** Nobody misses the answer about a batch that was not named. */
  Optional<LevelAgainstOthers> onlyIfNamed() {
    return Optional.empty();
  }

  /** Without a price nothing is missed. */
  Optional<MarginCost> onlyIfPriced() {
    return Optional.empty();
  }

  /** Most records have no blocks and miss nothing. */
  Optional<BlockTakes> onlyIfInBlocks() {
    return BlockTakesCalculator.of(fit.cells(), options);
  }

  private void lacks(Question question, String column) {
    if (levelsMet(column) != 1) {
      unanswered.add(new Unanswered(question, column, Unanswered.Cause.NOT_IN_MODEL));
      return;
    }
    int code = IntStream.of(fit.cells().factor(column).codes()).max().orElse(0);
    String level = GrafterLabels.shown(fit.cells().factor(column), options).get(code);
    unanswered.add(new Unanswered(question, column, new Unanswered.OneLevelOnly(level)));
  }

  private int levelsMet(String column) {
    return fit.cells().findFactor(column).map(Factor::levelsMet).orElse(0);
  }

  /** Likely range of each varying factor's standard deviation, logits, in the order of the fit. */
  List<Interval> spreads() {
    double[][] sds =
        IntStream.range(0, averaging.count())
            .mapToObj(averaging.draws()::sds)
            .toArray(double[][]::new);
    return IntStream.range(0, fit.varying().size())
        .mapToObj(
            k -> aroundFit(k, DrawSummary.range(DrawSummary.column(sds, k), options.coverage())))
        .toList();
  }

  /** A spread estimated as zero lies below every draw; the range then starts at the estimate. */
  private Interval aroundFit(int k, Interval range) {
    double estimate = fit.varying().get(k).standardDeviation();
    return new Interval(
        Math.min(range.low(), estimate), Math.max(range.high(), estimate), range.coverage());
  }
}
