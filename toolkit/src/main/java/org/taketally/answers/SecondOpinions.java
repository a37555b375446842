package org.taketally.answers;

import java.util.List;
import org.taketally.answers.counts.TakeCount;

/**
 * Other ways to predict take, each judged on a season it has not seen.
 *
 * @param opinions this model first
 * @param importance what moves the random forest's predictions, largest first
 * @param sentence whether anything beats the model
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
    boolean subsampled) {

  /**
   * One way of predicting.
   *
   * @param name what it is
   * @param logScore mean log probability given to what happened, below 0, higher is better
   * @param brier mean squared error of the predicted chance, 0 to 1, lower is better
   * @param calibrationSlope 1 if predicted chances are spread as widely as real ones
   * @param rankAgreement Spearman correlation of its cultivar ranks with this model's, -1 to 1; NaN
   *     if it has none
   */
  public record Opinion(
      String name, double logScore, double brier, double calibrationSlope, double rankAgreement) {}

  /**
   * A factor's weight in the random forest.
   *
   * @param factor column of the records
   * @param share share of all SHAP weight, 0 to 1
   */
  public record Importance(String factor, double share) {}
}
