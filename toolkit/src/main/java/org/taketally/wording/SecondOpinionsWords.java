package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.Words;
import org.taketally.answers.prediction.SecondOpinions;

/** Other ways of predicting, in words. */
final class SecondOpinionsWords implements AnswerWords {

  private final SecondOpinions answer;

  SecondOpinionsWords(SecondOpinions answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    return answer.sentence();
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    if (answer.subsampled()) {
      lines.add(
          "To save time, %s drawn evenly from the records were used."
              .formatted(Words.count(answer.tally().grafts(), "graft")));
    }
    return lines;
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "second-opinions",
            "Ways of predicting, each judged on a %s it has not seen".formatted(answer.heldOut()),
            AnswerColumn.MODEL,
            AnswerColumn.LOG_SCORE,
            AnswerColumn.BRIER,
            AnswerColumn.CALIBRATION_SLOPE,
            AnswerColumn.RANK_AGREEMENT);
    for (SecondOpinions.Opinion o : answer.opinions()) {
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
    answer.importance().forEach(i -> weights.row(i.factor(), i.share()));
    return List.of(mainTable(), weights.build(), calibration());
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
    for (SecondOpinions.Opinion opinion : answer.opinions()) {
      opinion.tenths().forEach(t -> table.row(opinion.name(), t.predicted(), t.tally()));
    }
    return table.build();
  }
}
