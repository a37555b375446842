package org.taketally.answers.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.advice.Advice.CompareHands;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.LevelComparison;
import org.taketally.answers.verdict.LevelComparisonCalculator;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.answers.verdict.Verdict;
import org.taketally.model.TakeFit;
import org.taketally.records.columns.RecordColumn;

/**
 * Works out {@link SeasonAdvice}. Every choice a grafter has is looked at; what is advised must
 * surely be right in its direction, all questions taken together: wrong advice, in any of them, at
 * most in 5 of 100 sets of records.
 */
public final class SeasonAdviceCalculator {

  /**
   * Sureness needed of a direction, all questions together. Both directions being possible, 97.5 %
   * would just do for 5 wrong in 100 if ranges were exact and questions had nothing in common; at
   * 99 % trials still gave up to 3 wrong in 48 circles of one kind.
   */
  public static final double SURE = 0.995;

  private static final String GRAFTER = RecordColumn.GRAFTER.columnName();

  /** What a grafter can choose; columns of one's own may be anything, and are left alone. */
  private static final Set<String> CHOICES =
      Set.of(
          RecordColumn.ROOTSTOCK.columnName(),
          RecordColumn.INTERSTOCK.columnName(),
          RecordColumn.METHOD.columnName(),
          RecordColumn.BUD_STAGE.columnName(),
          RecordColumn.STOCK_CONDITION.columnName(),
          RecordColumn.CAMBIUM_MATCH.columnName(),
          RecordColumn.TOOL_CLEANING.columnName(),
          RecordColumn.BUDWOOD_KEPT.columnName());

  private static final NoAdvice.Reason NOT_COMPARED = NoAdvice.Reason.NOT_COMPARED;

  private final TakeFit fit;
  private final List<Answer> answers;
  private final AnswerOptions options;

  /** A choice looked at: advised on, or not and why. */
  private record Looked(Optional<Advice> step, Optional<NoAdvice> none) {
    static Looked advised(Advice step) {
      return new Looked(Optional.of(step), Optional.empty());
    }

    static Looked none(String factor, NoAdvice.Reason reason) {
      return new Looked(Optional.empty(), Optional.of(new NoAdvice(factor, reason)));
    }
  }

  private SeasonAdviceCalculator(TakeFit fit, List<Answer> answers, AnswerOptions options) {
    this.fit = fit;
    this.answers = List.copyOf(answers);
    this.options = options;
  }

  /**
   * Looks at every choice in the model.
   *
   * @param fit the fit the answers come from
   * @param answers those already worked out; verdicts and the storage curve among them are used
   * @param handsRecorded whether the records say who grafted; without that nothing but counts can
   *     be compared, and nothing is advised
   * @param options margin, level, draws, seed
   * @return the advice, largest gain first
   */
  public static SeasonAdvice of(
      TakeFit fit, List<Answer> answers, boolean handsRecorded, AnswerOptions options) {
    SeasonAdviceCalculator calculator = new SeasonAdviceCalculator(fit, answers, options);
    return handsRecorded ? calculator.advice() : calculator.withoutHands();
  }

  private SeasonAdvice withoutHands() {
    Stream<String> looked =
        Stream.concat(choices().stream(), curve().map(TakeCurve::column).stream());
    return advice(
        looked.map(factor -> Looked.none(factor, NoAdvice.Reason.HANDS_NOT_RECORDED)).toList());
  }

  private SeasonAdvice advice() {
    List<String> choices = choices();
    boolean hands = fit.model().varying().contains(GRAFTER);
    int questions = choices.size() + (hands ? 1 : 0) + (curve().isPresent() ? 1 : 0);
    Sureness sureness = new Sureness(questions);
    List<String> compared = new ArrayList<>(choices);
    if (hands) {
      compared.add(GRAFTER);
    }
    Map<String, LevelComparison> comparisons = comparisons(compared);
    List<Supplier<Looked>> looks = new ArrayList<>();
    for (String factor : choices) {
      looks.add(() -> choice(factor, comparisons.get(factor), sureness));
    }
    curve().ifPresent(c -> looks.add(() -> curve(c, sureness)));
    if (comparisons.containsKey(GRAFTER)) {
      looks.add(() -> hands(comparisons.get(GRAFTER), sureness));
    }
    // Some cost a fit, so they are looked at several at a time.
    return advice(looks.parallelStream().map(Supplier::get).toList());
  }

  private static SeasonAdvice advice(List<Looked> looked) {
    return new SeasonAdvice(
        looked.stream()
            .flatMap(look -> look.step().stream())
            .sorted(Comparator.comparingDouble((Advice a) -> a.gain().value()).reversed())
            .toList(),
        looked.stream().flatMap(look -> look.none().stream()).toList());
  }

  private Looked choice(String factor, LevelComparison comparison, Sureness sureness) {
    if (comparison == null) {
      return Looked.none(factor, NoAdvice.Reason.NOT_COMPARED);
    }
    return comparedWithin(factor)
        ? levelsWithin(factor, comparison, sureness)
        : levels(factor, new LevelRule(comparison, sureness));
  }

  private List<String> choices() {
    Stream<String> adjusted = fit.model().adjusted().stream().filter(fit.design()::adjustsFor);
    return Stream.concat(
            verdicts().map(FactorVerdict::factor),
            Stream.concat(adjusted, fit.model().varying().stream()))
        .filter(CHOICES::contains)
        .distinct()
        .toList();
  }

  private Optional<TakeCurve> curve() {
    return found(TakeCurve.class).filter(c -> !c.points().isEmpty());
  }

  private Looked curve(TakeCurve curve, Sureness sureness) {
    int freedom = fit.model().curves().getOrDefault(curve.column(), 1);
    CurveRule rule = new CurveRule(curve, sureness, freedom);
    Optional<Advice.UseWithin> shown = rule.advice();
    Optional<TakeCurve> within =
        shown.isPresent() ? new WithinHands(fit, options).curve(curve) : Optional.empty();
    if (shown.isPresent() && within.isEmpty()) {
      return Looked.none(curve.column(), NoAdvice.Reason.NOT_COMPARED);
    }
    return shown
        .flatMap(advice -> rule.confirmed(advice, within.orElseThrow()))
        .map(Looked::advised)
        .orElseGet(() -> Looked.none(curve.column(), NoAdvice.Reason.NOT_SURE));
  }

  private Looked levels(String factor, LevelRule rule) {
    Optional<NoAdvice.Reason> barred = rule.barred();
    Optional<Advice.PreferLevels> advice = rule.advice();
    if (barred.isPresent()) {
      return Looked.none(factor, barred.get());
    }
    return advice.isEmpty() || undecided(factor)
        ? Looked.none(factor, NoAdvice.Reason.NOT_SURE)
        : Looked.advised(advice.get());
  }

  /**
   * A choice as the fit compares it; where hands or days used it unevenly, only what a comparison
   * within them says as well. That costs a fit, so it is made only of what would be advised.
   */
  private Looked levelsWithin(String factor, LevelComparison comparison, Sureness sureness) {
    WithinHands hands = new WithinHands(fit, options);
    LevelRule rule = new LevelRule(hands.met(comparison), sureness, true);
    Optional<Advice.PreferLevels> advice = rule.advice();
    if (!hands.uneven(factor)) {
      return levels(factor, rule);
    }
    return advice.isEmpty()
        ? Looked.none(
            factor, rule.barred().filter(NOT_COMPARED::equals).orElse(NoAdvice.Reason.NOT_SURE))
        : confirm(factor, advice.get(), hands.levels(factor), sureness);
  }

  private Looked confirm(
      String factor,
      Advice.PreferLevels advice,
      Optional<LevelComparison> within,
      Sureness sureness) {
    Optional<LevelRule> rule = within.map(found -> new LevelRule(found, sureness, true));
    Optional<Advice.PreferLevels> both = rule.flatMap(found -> found.confirming(advice));
    boolean apart = rule.flatMap(LevelRule::barred).filter(NOT_COMPARED::equals).isPresent();
    return both.map(Looked::advised)
        .orElseGet(
            () ->
                Looked.none(
                    factor, apart || rule.isEmpty() ? NOT_COMPARED : NoAdvice.Reason.NOT_SURE));
  }

  /** Advice must not say more than the verdict printed beside it. */
  private boolean undecided(String factor) {
    return verdicts()
        .filter(v -> v.factor().equals(factor))
        .anyMatch(
            v ->
                v.verdict() == Verdict.CANT_TELL_YET || v.verdict() == Verdict.DEPENDS_ON_CULTIVAR);
  }

  /** Verdicts worked out already, on free levels and in fits of their own, are used first. */
  private Map<String, LevelComparison> comparisons(List<String> factors) {
    Map<String, LevelComparison> comparisons = new HashMap<>();
    verdicts().forEach(v -> comparisons.put(v.factor(), LevelComparison.of(v)));
    List<String> rest = factors.stream().filter(f -> !comparisons.containsKey(f)).toList();
    LevelComparisonCalculator.of(fit, rest, options)
        .forEach(comparison -> comparisons.put(comparison.factor(), comparison));
    return comparisons;
  }

  /** A choice without a verdict, which is compared here within hands and days. */
  private boolean comparedWithin(String factor) {
    return CHOICES.contains(factor)
        && fit.design().adjustsFor(factor)
        && verdicts().noneMatch(verdict -> verdict.factor().equals(factor));
  }

  private Stream<FactorVerdict> verdicts() {
    return found(RootstockVerdict.class).stream()
        .flatMap(answer -> Stream.concat(Stream.of(answer.type()), answer.condition().stream()));
  }

  private Looked hands(LevelComparison comparison, Sureness sureness) {
    LevelRule rule = new LevelRule(comparison, sureness);
    Optional<Advice.PreferLevels> apart = rule.advice();
    if (apart.isEmpty()) {
      return Looked.none(GRAFTER, rule.barred().orElse(NoAdvice.Reason.NOT_SURE));
    }
    Estimate typical =
        found(FactorImportance.class).stream()
            .flatMap(answer -> answer.factors().stream())
            .filter(mover -> mover.factor().equals(GRAFTER))
            .map(Importance::typical)
            .findFirst()
            .orElse(apart.get().gain());
    int hands = comparison.levels().size();
    long grafts = fit.cells().graftsTotal();
    return Looked.advised(new CompareHands(GRAFTER, hands, typical, apart.get().sure(), grafts));
  }

  private <T extends Answer> Optional<T> found(Class<T> kind) {
    return answers.stream().filter(kind::isInstance).map(kind::cast).findFirst();
  }
}
