package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.FitChecks.Tenth;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

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

  static final String QUESTION = "Does another way of predicting do better?";

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

  /**
   * Fits the model and asks for second opinions.
   *
   * @param model what take may depend on
   * @param cells the records, seasons included
   * @param options draws and seed
   * @return the opinions
   * @throws org.taketally.model.CannotFit if the model can't be fitted to all records
   */
  public static SecondOpinions of(TakeModel model, Cells cells, AnswerOptions options) {
    return of(model.fit(cells), options);
  }

  /**
   * Second opinions on a fit: each way of predicting predicts every season from the others. Above
   * 20,000 grafts only so many are used, drawn evenly.
   *
   * @param fit the fit, its cells with a season
   * @param options draws and seed
   * @return the opinions
   */
  public static SecondOpinions of(TakeFit fit, AnswerOptions options) {
    return OpinionsSought.of(fit, options);
  }

  @Override
  public String title() {
    return QUESTION;
  }

  @Override
  public String headline() {
    return sentence;
  }

  @Override
  public String text() {
    List<String> lines = new ArrayList<>(List.of(sentence));
    if (subsampled) {
      lines.add(
          "To save time, %s drawn evenly from the records were used."
              .formatted(Words.count(tally.grafts(), "graft")));
    }
    return String.join("\n", lines);
  }

  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "second-opinions",
            "Ways of predicting, each judged on a %s it has not seen".formatted(heldOut),
            AnswerColumn.MODEL,
            AnswerColumn.LOG_SCORE,
            AnswerColumn.BRIER,
            AnswerColumn.CALIBRATION_SLOPE,
            AnswerColumn.RANK_AGREEMENT);
    for (Opinion o : opinions) {
      table.row(o.name(), o.logScore(), o.brier(), o.calibrationSlope(), o.rankAgreement());
    }
    return table.build();
  }

  /** {@inheritDoc} The ways of predicting, what moves the random forest, and calibration. */
  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder weights =
        AnswerTable.of(
            "forest-weights",
            "What moves the random forest's predictions",
            AnswerColumn.FACTOR,
            AnswerColumn.SHARE);
    importance.forEach(i -> weights.row(i.factor(), i.share()));
    return List.of(table(), weights.build(), calibration());
  }

  private AnswerTable calibration() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "second-opinions-calibration",
            "Predicted against counted take, by tenths of the prediction",
            AnswerColumn.MODEL,
            AnswerColumn.PREDICTED,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE);
    for (Opinion opinion : opinions) {
      opinion.tenths().forEach(t -> table.row(opinion.name(), t.predicted(), t.tally()));
    }
    return table.build();
  }
}
