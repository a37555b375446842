package org.taketally.answers.prediction;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.answers.counts.TakeCount;

/**
 * Other ways to predict take, each judged on a season it has not seen.
 *
 * @param opinions this model first; empty if there was nothing to predict, see {@code sentence}
 * @param importance what moves the random forest's predictions, largest first
 * @param sentence whether anything beats the model, or why that can't be said
 * @param heldOut what was held out, e.g. {@code season}
 * @param tally grafts and takes used
 * @param subsampled whether only a part of the records was used
 */
public record SecondOpinions(
    List<Opinion> opinions,
    List<Importance> importance,
    String sentence,
    String heldOut,
    TakeCount tally,
    boolean subsampled)
    implements Answer {

  public SecondOpinions {
    opinions = List.copyOf(opinions);
    importance = List.copyOf(importance);
  }

  /**
   * One way of predicting.
   *
   * @param name what it is
   * @param logScore mean log probability given to what happened, below 0, higher is better
   * @param brier mean squared error of the predicted chance, 0 to 1, lower is better
   * @param calibrationSlope 1 if predicted chances are spread as widely as real ones
   * @param rankAgreement Spearman correlation of its cultivar ranks with this model's, -1 to 1; NaN
   *     if it has none
   * @param tenths predicted against counted take by tenths of the prediction
   */
  public record Opinion(
      String name,
      double logScore,
      double brier,
      double calibrationSlope,
      double rankAgreement,
      List<Tenth> tenths) {

    public Opinion {
      tenths = List.copyOf(tenths);
    }
  }

  /**
   * A factor's weight in the random forest.
   *
   * @param factor column of the records
   * @param share share of all SHAP weight, 0 to 1
   */
  public record Importance(String factor, double share) {}

  @Override
  public Question question() {
    return Question.SECOND_OPINIONS;
  }
}
