package org.taketally.wording;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.taketally.answers.Answer;
import org.taketally.answers.batches.LevelAgainstOthers;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.BlockTakes;
import org.taketally.answers.counts.TakeCounts;
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

/** Answers in plain words: {@code Wording.of(answer).text()}. The register of who words what. */
public final class Wording {

  private static final Map<Class<?>, Function<Answer, AnswerWords>> REGISTER =
      new LinkedHashMap<>();

  static {
    add(RootstockVerdict.class, RootstockVerdictWords::new);
    add(FactorVerdict.class, FactorVerdictWords::new);
    add(PlannedContrasts.class, PlannedContrastsWords::new);
    add(LevelAgainstOthers.class, LevelAgainstOthersWords::new);
    add(MarginCost.class, MarginCostWords::new);
    add(Difficulty.class, DifficultyWords::new);
    add(FactorImportance.class, FactorImportanceWords::new);
    add(TakeCurve.class, TakeCurveWords::new);
    add(LateLoss.class, LateLossWords::new);
    add(Pairings.class, PairingsWords::new);
    add(Grafters.class, GraftersWords::new);
    add(BlockTakes.class, BlockTakesWords::new);
    add(Confounding.class, ConfoundingWords::new);
    add(FitChecks.class, FitChecksWords::new);
    add(SecondOpinions.class, SecondOpinionsWords::new);
    add(TakeCounts.class, TakeCountsWords::new);
  }

  private Wording() {}

  private static <A extends Answer> void add(Class<A> kind, Function<A, AnswerWords> words) {
    REGISTER.put(kind, answer -> words.apply(kind.cast(answer)));
  }

  /**
   * Whether a kind of answer can be worded.
   *
   * @param kind an answer's class
   * @return true if it is registered here
   */
  public static boolean knows(Class<? extends Answer> kind) {
    return REGISTER.containsKey(kind);
  }

  /**
   * An answer in words.
   *
   * @param answer any answer
   * @return its question, headline, reasons and tables
   * @throws IllegalArgumentException if nobody has said how to word such an answer
   */
  public static AnswerWords of(Answer answer) {
    Function<Answer, AnswerWords> words = REGISTER.get(answer.getClass());
    if (words == null) {
      throw new IllegalArgumentException(
          "no words for %s: add a line to Wording".formatted(answer.getClass().getSimpleName()));
    }
    return words.apply(answer);
  }
}
