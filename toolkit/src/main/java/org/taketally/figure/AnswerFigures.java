package org.taketally.figure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.taketally.answers.Answer;
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
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.MarginCost;
import org.taketally.answers.verdict.PlannedContrasts;
import org.taketally.answers.verdict.RootstockVerdict;
import org.taketally.wording.language.Language;

/** The register of figures: which figures belong to which answer. */
public final class AnswerFigures {

  private static final Map<Class<?>, Function<Answer, List<AnswerFigure>>> REGISTER =
      new LinkedHashMap<>();

  static {
    add(RootstockVerdict.class, AnswerFigures::ofRootstock);
    add(
        FactorVerdict.class,
        verdict -> one(size -> DifferencesFigure.draw(verdict, size, Language.ENGLISH)));
    add(PlannedContrasts.class, answer -> one(size -> ContrastsFigure.draw(answer, size)));
    add(
        Difficulty.class,
        answer -> one(size -> DifficultyFigure.draw(answer, size, Language.ENGLISH)));
    add(
        FactorImportance.class,
        answer -> one(size -> ImportanceFigure.draw(answer, size, Language.ENGLISH)));
    add(
        TakeCurve.class,
        answer -> one(size -> TakeCurveFigure.draw(answer, size, Language.ENGLISH)));
    add(
        LevelAgainstOthers.class,
        answer -> one(size -> DifferencesFigure.draw(answer.verdict(), size, Language.ENGLISH)));
    add(LateLoss.class, AnswerFigures::ofLateLoss);
    add(Pairings.class, answer -> one(size -> PairingsFigure.draw(answer, size)));
    add(Grafters.class, answer -> one(size -> GraftersFigure.draw(answer, size)));
    add(BlockTakes.class, answer -> one(size -> BlockTakesFigure.draw(answer, size)));
    add(Confounding.class, answer -> one(size -> ConfoundingFigure.draw(answer, size)));
    add(FitChecks.class, answer -> one(size -> CalibrationFigure.draw(answer, size)));
    add(MarginCost.class, answer -> one(size -> MarginCostFigure.draw(answer, size)));
    add(
        SecondOpinions.class,
        answer ->
            answer.opinions().isEmpty()
                ? List.of()
                : one(size -> CalibrationFigure.draw(answer, size)));
  }

  private AnswerFigures() {}

  /** One figure, drawn when its size is known. */
  @FunctionalInterface
  public interface AnswerFigure {

    /**
     * Draws it.
     *
     * @param size shape it is laid out for
     * @return an {@code <svg>} element
     */
    String draw(FigureSize size);
  }

  private static <A extends Answer> void add(
      Class<A> kind, Function<A, List<AnswerFigure>> figures) {
    REGISTER.put(kind, answer -> figures.apply(kind.cast(answer)));
  }

  private static List<AnswerFigure> one(AnswerFigure figure) {
    return List.of(figure);
  }

  private static List<AnswerFigure> ofRootstock(RootstockVerdict verdict) {
    List<AnswerFigure> figures = new ArrayList<>(of(verdict.type()));
    verdict.condition().ifPresent(condition -> figures.addAll(of(condition)));
    return figures;
  }

  private static List<AnswerFigure> ofLateLoss(LateLoss loss) {
    List<AnswerFigure> figures = new ArrayList<>();
    figures.add(size -> LateLossFigure.draw(loss, size));
    for (LateLoss.FactorLoss factor : loss.factors()) {
      figures.add(size -> LateLossLevelsFigure.draw(loss, factor, size));
    }
    return figures;
  }

  /**
   * Whether a kind of answer has figures.
   *
   * @param kind an answer's class
   * @return true if it is registered here
   */
  public static boolean has(Class<? extends Answer> kind) {
    return REGISTER.containsKey(kind);
  }

  /**
   * Figures of an answer.
   *
   * @param answer any answer
   * @return the main one first; none for kinds that have no figure
   */
  public static List<AnswerFigure> of(Answer answer) {
    return REGISTER.getOrDefault(answer.getClass(), other -> List.of()).apply(answer);
  }
}
