package org.taketally.answers.verdict;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;

/**
 * Contrasts planned in advance, each with a verdict of its own.
 *
 * @param factor column of the records
 * @param results in the order asked
 * @param tally grafts and takes of the whole fit
 * @param options margin, level, draws, seed
 */
public record PlannedContrasts(
    String factor, List<Result> results, TakeCount tally, AnswerOptions options) implements Answer {

  public PlannedContrasts {
    results = List.copyOf(results);
  }

  /**
   * One contrast.
   *
   * @param contrast what was asked
   * @param verdict {@code entangled} where these records can't compare its levels; never {@code
   *     depends on the cultivar}
   * @param difference average take of the first levels less that of the others, -1 to 1, with the
   *     range that decided the verdict ({@link VerdictRules#ALONE} where it is within the margin,
   *     {@link VerdictRules#BEYOND} where it is beyond, else {@link VerdictRules#AT_ONCE}); the
   *     range holds for all contrasts asked at once, and for whatever became of unassessed grafts;
   *     empty if it can't be estimated
   * @param probabilityBeyondMargin chance that the difference exceeds the margin either way, 0 to
   *     1; 0 if it can't be estimated
   * @param some grafts and takes of the first levels
   * @param others grafts and takes of those they are compared with
   */
  public record Result(
      Contrast contrast,
      Verdict verdict,
      Optional<Estimate> difference,
      double probabilityBeyondMargin,
      TakeCount some,
      TakeCount others) {

    /**
     * Whether the whole range that decides lies inside the margin on both sides.
     *
     * @return whether the two sides make no practical difference
     */
    public boolean equivalent() {
      return verdict == Verdict.NO_PRACTICAL_DIFFERENCE
          || verdict == Verdict.LESS_THAN_YOU_CARE_ABOUT;
    }
  }

  /**
   * What was asked.
   *
   * @return the contrasts, in the order asked
   */
  public List<Contrast> contrasts() {
    return results.stream().map(Result::contrast).toList();
  }

  /**
   * One contrast by its name.
   *
   * @param name as given to the contrast
   * @return its result; empty if no contrast has that name
   */
  public Optional<Result> find(String name) {
    return results.stream().filter(each -> each.contrast().name().equals(name)).findFirst();
  }

  @Override
  public Question question() {
    return Question.CONTRASTS;
  }
}
