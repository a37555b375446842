package org.taketally.analysis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Question;
import org.taketally.answers.Unanswered;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.adjusted.ModelChange;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.batches.LevelAgainstOthers;
import org.taketally.answers.batches.LevelAgainstOthersCalculator;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.Pairings;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.prediction.SecondOpinions;
import org.taketally.answers.prediction.SecondOpinionsCalculator;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLossCalculator;
import org.taketally.answers.verdict.Contrast;
import org.taketally.answers.verdict.MarginCost;
import org.taketally.answers.verdict.MarginCostCalculator;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.PlannedContrastsCalculator;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Interval;
import tech.tablesaw.api.Table;

/**
 * The door: every answer some records hold, from one fit; each missing one with its reason. {@code
 * Analysis.of(records)} is all it takes.
 *
 * @param fit the fit behind the answers
 * @param compared the column the question is about, as asked; empty if none was named
 * @param changes what had to be changed in the model asked for; usually nothing
 * @param answers in the order of {@link AnswerRegister}
 * @param spreads likely range of each varying factor's standard deviation, logits, in the order of
 *     the fit
 * @param unanswered questions these records don't answer
 * @param options what was asked
 */
public record Analysis(
    TakeFit fit,
    Optional<String> compared,
    List<ModelChange> changes,
    List<Answer> answers,
    List<Interval> spreads,
    List<Unanswered> unanswered,
    AnswerOptions options) {

  public Analysis {
    changes = List.copyOf(changes);
    answers = List.copyOf(answers);
    spreads = List.copyOf(spreads);
    unanswered = List.copyOf(unanswered);
  }

  /**
   * Fits the suggested model to records, and answers, with default options.
   *
   * @param records any records with assessed grafts
   * @return all answers
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   * @throws org.taketally.records.problems.RecordsUnreadable if they read two ways and nobody has
   *     said which, such as blank results
   */
  public static Analysis of(GraftRecords records) {
    return of(records, AnswerOptions.defaults());
  }

  /**
   * Fits the suggested model to records, and answers.
   *
   * @param records any records with assessed grafts
   * @param options margin, level, draws, seed
   * @return all answers
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   * @throws org.taketally.records.problems.RecordsUnreadable if they read two ways and nobody has
   *     said which, such as blank results
   */
  public static Analysis of(GraftRecords records, AnswerOptions options) {
    records.check().requireSettled();
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
    return of(cells, model, options, Set.of());
  }

  /**
   * Fits the model, or the nearest one the records can carry, and answers all but some questions,
   * which are then neither answered nor listed as unanswered.
   *
   * @param cells the records
   * @param model what take may depend on
   * @param options margin, level, draws, seed
   * @param leftOut questions not asked, e.g. {@link Question#FIT}, which takes a fit a season
   * @return the answers
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   */
  public static Analysis of(
      Cells cells, TakeModel model, AnswerOptions options, Set<Question> leftOut) {
    FallbackFit fallback = FallbackFit.of(cells, model);
    return of(fallback.fit(), model.compared(), fallback.changes(), options, leftOut);
  }

  /**
   * Answers from a fit.
   *
   * @param fit the fit
   * @param options margin, level, draws, seed
   * @return all answers
   */
  public static Analysis of(TakeFit fit, AnswerOptions options) {
    return of(fit, fit.model().compared(), List.of(), options, Set.of());
  }

  private static Analysis of(
      TakeFit fit,
      Optional<String> compared,
      List<ModelChange> changes,
      AnswerOptions options,
      Set<Question> leftOut) {
    AnswerFinder finder = new AnswerFinder(fit, compared, options);
    List<AnswerFinder.Found> found =
        Arrays.stream(AnswerRegister.values())
            .parallel()
            .filter(line -> !leftOut.contains(line.question()))
            .map(line -> finder.find(line::find))
            .toList();
    return new Analysis(
        fit,
        compared,
        changes,
        found.stream().<Answer>flatMap(line -> line.answer().stream()).toList(),
        finder.spreads(),
        found.stream().flatMap(line -> line.unanswered().stream()).toList(),
        options);
  }

  /**
   * The answer of a kind.
   *
   * @param kind e.g. {@code Difficulty.class}
   * @param <T> that kind
   * @return empty if these records don't hold it; {@link #unanswered} says why
   */
  public <T extends Answer> Optional<T> find(Class<T> kind) {
    return answers.stream().filter(kind::isInstance).map(kind::cast).findFirst();
  }

  /**
   * Whether the compared column, usually the rootstock, matters.
   *
   * @return empty if there is nothing to compare
   */
  public Optional<RootstockVerdict> rootstock() {
    return find(RootstockVerdict.class);
  }

  /**
   * Contrasts planned in advance.
   *
   * @return empty unless {@link #withContrasts} was asked
   */
  public Optional<PlannedContrasts> contrasts() {
    return find(PlannedContrasts.class);
  }

  /**
   * How hard each cultivar is.
   *
   * @return empty if the model doesn't know cultivars
   */
  public Optional<Difficulty> difficulty() {
    return find(Difficulty.class);
  }

  /**
   * Every factor on one scale.
   *
   * @return the answer, always there
   */
  public FactorImportance importance() {
    return find(FactorImportance.class).orElseThrow();
  }

  /**
   * Take against days of storage.
   *
   * @return empty if the model has no storage days
   */
  public Optional<TakeCurve> storage() {
    return find(TakeCurve.class);
  }

  /**
   * Pairings that do worse than cultivar and rootstock alone.
   *
   * @return empty if the model has no pairings
   */
  public Optional<Pairings> pairings() {
    return find(Pairings.class);
  }

  /**
   * Each grafter's take had all grafted the same mix.
   *
   * @return empty if the model doesn't know grafters
   */
  public Optional<Grafters> grafters() {
    return find(Grafters.class);
  }

  /**
   * What was compared with what.
   *
   * @return empty if there is nothing to compare
   */
  public Optional<Confounding> confounding() {
    return find(Confounding.class);
  }

  /**
   * Whether the model fits.
   *
   * @return empty for very large records
   */
  public Optional<FitChecks> fitChecks() {
    return find(FitChecks.class);
  }

  /**
   * Early take, final take and what is lost between them.
   *
   * @return empty unless {@link #withLateLoss} found it
   */
  public Optional<LateLoss> lateLoss() {
    return find(LateLoss.class);
  }

  /**
   * Whether another way of predicting does better.
   *
   * @return empty unless {@link #withSecondOpinions} was asked
   */
  public Optional<SecondOpinions> secondOpinions() {
    return find(SecondOpinions.class);
  }

  /**
   * Whether one level stands apart.
   *
   * @return empty unless {@link #withLevelAgainstOthers} was asked
   */
  public Optional<LevelAgainstOthers> levelAgainstOthers() {
    return find(LevelAgainstOthers.class);
  }

  /**
   * What a drop in take costs.
   *
   * @return empty unless {@link #withCost} was asked
   */
  public Optional<MarginCost> marginCost() {
    return find(MarginCost.class);
  }

  /**
   * Posterior draws of the fit's fixed effects and standard deviations, for statements of your own.
   *
   * @return one row a draw, {@code options.draws()} of them; one column an effect, then one a
   *     standard deviation, all in logits
   */
  public Table draws() {
    return DrawTables.parameters(fit.draws(options.draws(), options.seed()), fit.varying());
  }

  /**
   * Posterior draws of take by level: what share would take if every graft in the records had that
   * level, all else as recorded.
   *
   * @param column a column of levels that the fit has, e.g. {@code rootstock}
   * @return one row a draw; one column a level, 0 to 1
   * @throws IllegalArgumentException if the fit doesn't have the column, naming those it has
   */
  public Table takeDraws(String column) {
    return DrawTables.takes(MarginalTakes.of(fit, options), column);
  }

  /**
   * With another margin, from the same fit.
   *
   * @param margin difference in take that would change what you do, as a fraction of 1: 0.05 for 5
   *     points
   * @return the analysis with every answer judged by it
   */
  public Analysis withMargin(double margin) {
    return withOptions(options.withMargin(margin));
  }

  /**
   * With other options, from the same fit.
   *
   * @param other margin, level, draws, seed
   * @return the analysis; answers asked for besides stay
   */
  public Analysis withOptions(AnswerOptions other) {
    Analysis again = of(fit, compared, changes, other, Set.of());
    for (Question besides :
        List.of(Question.LEVEL_APART, Question.LATE_LOSS, Question.SECOND_OPINIONS)) {
      again = again.taking(besides, this);
    }
    if (contrasts().isPresent()) {
      PlannedContrasts asked = contrasts().get();
      again =
          again.with(PlannedContrastsCalculator.of(fit, asked.factor(), asked.contrasts(), other));
    }
    Optional<MarginCost> cost = marginCost();
    return cost.isEmpty()
        ? again
        : again.withCost(cost.get().costPerGraft(), cost.get().pricePerTree());
  }

  private Analysis taking(Question question, Analysis from) {
    Optional<Answer> answer =
        from.answers.stream().filter(a -> a.question() == question).findFirst();
    if (answer.isPresent()) {
      return with(answer.get());
    }
    return from.unanswered.stream()
        .filter(missing -> missing.question() == question)
        .findFirst()
        .map(this::without)
        .orElse(this);
  }

  /**
   * With early take, final take and late loss from repeated counts.
   *
   * @param records the records analysed
   * @param assessments counts that belong to them
   * @return the analysis with the answer, or with the reason why there is none
   */
  public Analysis withLateLoss(GraftRecords records, Assessments assessments) {
    Optional<LateLoss> loss = LateLossCalculator.of(records, assessments, options);
    return loss.isPresent()
        ? with(loss.get())
        : without(Unanswered.of(Question.LATE_LOSS, Unanswered.Cause.NO_ROW_COUNTED_AGAIN));
  }

  /**
   * With other ways of predicting, each judged on seasons it has not seen. Takes about as long as
   * all other answers together.
   *
   * @return the analysis with the answer
   */
  public Analysis withSecondOpinions() {
    return with(SecondOpinionsCalculator.of(fit, options));
  }

  /**
   * With contrasts planned in advance: some levels of a column together against others. All that
   * are asked in one call are judged at once; another call replaces them.
   *
   * @param column a column the fit has, e.g. {@code rootstock}
   * @param contrasts at least one, each name once
   * @return the analysis with the answer
   * @throws IllegalArgumentException if the fit doesn't have the column or a level, naming the
   *     nearest
   */
  public Analysis withContrasts(String column, Contrast... contrasts) {
    return with(PlannedContrastsCalculator.of(fit, column, List.of(contrasts), options));
  }

  /**
   * With whether one batch, day, bed or hand takes worse or better than all others.
   *
   * @param records the records analysed
   * @param column e.g. {@code fridge_batch}
   * @param level e.g. {@code 7}
   * @return the analysis with the answer
   * @throws IllegalArgumentException if there is no such column or level, naming those there are
   */
  public Analysis withLevelAgainstOthers(GraftRecords records, String column, String level) {
    return with(
        LevelAgainstOthersCalculator.of(
            records,
            TakeModel.of(fit.model()),
            new LevelAgainstOthersCalculator.Asked(column, level),
            options));
  }

  /**
   * With what a drop in take by the margin costs, at the take counted in the records.
   *
   * @param costPerGraft cost of one graft made, in the user's money, above 0
   * @param pricePerTree what a saleable tree brings, above 0; empty if not said
   * @return the analysis with the answer, or with the reason why there is none
   */
  public Analysis withCost(double costPerGraft, OptionalDouble pricePerTree) {
    double take = TakeCounter.all(fit.cells()).rate();
    return take <= options.margin()
        ? without(
            Unanswered.of(
                Question.MARGIN_COST, new Unanswered.TakeWithinMargin(take, options.margin())))
        : with(
            MarginCostCalculator.of(
                new MarginCostCalculator.Costs(costPerGraft, 0, pricePerTree),
                take,
                options.margin()));
  }

  private Analysis with(Answer answer) {
    List<Answer> all = new ArrayList<>();
    for (AnswerRegister line : AnswerRegister.values()) {
      if (line.kind().isInstance(answer)) {
        all.add(answer);
      } else {
        answers.stream().filter(line.kind()::isInstance).forEach(all::add);
      }
    }
    return with(all, othersThan(answer.question()));
  }

  private Analysis without(Unanswered missing) {
    List<Unanswered> all = othersThan(missing.question());
    all.add(missing);
    return with(answers, all);
  }

  private List<Unanswered> othersThan(Question question) {
    return new ArrayList<>(
        unanswered.stream().filter(missing -> missing.question() != question).toList());
  }

  private Analysis with(List<Answer> given, List<Unanswered> missing) {
    return new Analysis(fit, compared, changes, given, spreads, missing, options);
  }
}
