package org.taketally.answers.verdict;

import java.util.List;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.answers.verdict.FactorVerdict.Pair;

/**
 * How the levels of one factor took beside each other, without a verdict.
 *
 * @param factor column of the records
 * @param levels each level's take
 * @param pairs every pair of levels that these records can compare, the higher take first
 * @param confounding what was compared with what
 * @param options margin and level used
 */
public record LevelComparison(
    String factor,
    List<LevelTake> levels,
    List<Pair> pairs,
    Confounding confounding,
    AnswerOptions options) {

  public LevelComparison {
    levels = List.copyOf(levels);
    pairs = List.copyOf(pairs);
  }

  /**
   * What a verdict rests on.
   *
   * @param verdict any verdict
   * @return its levels and pairs; no pairs if they couldn't be estimated
   */
  public static LevelComparison of(FactorVerdict verdict) {
    return new LevelComparison(
        verdict.factor(),
        verdict.levels(),
        verdict.size().map(FactorVerdict.Size::pairs).orElse(List.of()),
        verdict.confounding(),
        verdict.options());
  }
}
