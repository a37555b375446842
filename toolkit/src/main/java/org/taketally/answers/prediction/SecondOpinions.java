package org.taketally.answers.prediction;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.answers.checks.FitChecks.Tenth;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.CannotFit;

/**
 * Other ways to predict take, each judged on a season it has not seen.
 *
 * @param opinions this model first; empty if there was nothing to predict
 * @param importance what moves the random forest's predictions, largest first
 * @param best the best way other than this model; empty if there was nothing to predict
 * @param none why there is no second opinion; empty if there is one
 * @param heldOut what was held out, e.g. {@code season}
 * @param tally grafts and takes used
 * @param subsampled whether only a part of the records was used
 */
public record SecondOpinions(
    List<Opinion> opinions,
    List<Importance> importance,
    Optional<Best> best,
    Optional<NoOpinion> none,
    String heldOut,
    TakeCount tally,
    boolean subsampled)
    implements Answer {

  public SecondOpinions {
    opinions = List.copyOf(opinions);
    importance = List.copyOf(importance);
  }

  /** A way of predicting. */
  public enum Way {
    /** The model in hand. */
    THIS_MODEL,
    /** Ridge logistic regression. */
    RIDGE,
    /** A random forest. */
    FOREST,
    /** The same chance for every graft: the counted take of the other seasons. */
    SAME_CHANCE
  }

  /** How a way of predicting stands against this model. */
  public enum Standing {
    /** Clearly better: something moves take that the model doesn't know. */
    BETTER,
    /** No clear difference. */
    ABOUT_AS_GOOD,
    /** Clearly worse. */
    WORSE
  }

  /**
   * The best way other than this model.
   *
   * @param way which
   * @param standing how it stands against this model
   */
  public record Best(Way way, Standing standing) {}

  /** Why there is no second opinion. */
  public enum Reason {
    /** It takes two seasons or more. */
    ONE_SEASON,
    /** Some grafts have no season. */
    SEASON_MISSING,
    /** The model has nothing that carries over from one season to another. */
    NOTHING_LASTS,
    /** A part of the records small enough to compare on can't be fitted. */
    PART_CANT_BE_FITTED,
    /** Without one of the seasons the rest can't be fitted. */
    REST_CANT_BE_FITTED
  }

  /**
   * Why there is no second opinion.
   *
   * @param reason why
   * @param cause what the fit said of it; empty if it wasn't the fit
   */
  public record NoOpinion(Reason reason, Optional<CannotFit> cause) {}

  /**
   * One way of predicting.
   *
   * @param way which
   * @param logScore mean log probability given to what happened, below 0, higher is better
   * @param brier mean squared error of the predicted chance, 0 to 1, lower is better
   * @param calibrationSlope 1 if predicted chances are spread as widely as real ones
   * @param rankAgreement Spearman correlation of its cultivar ranks with this model's, -1 to 1; NaN
   *     if it has none
   * @param tenths predicted against counted take by tenths of the prediction
   */
  public record Opinion(
      Way way,
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
