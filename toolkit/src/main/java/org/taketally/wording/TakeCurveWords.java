package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.Words;
import org.taketally.answers.effects.TakeCurve;

/** Take along a number, in words. */
final class TakeCurveWords implements AnswerWords {

  private final TakeCurve answer;

  TakeCurveWords(TakeCurve answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question(), answer.column());
  }

  @Override
  public String headline() {
    return answer.headline();
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    if (!Double.isNaN(answer.thinFrom())) {
      lines.add(
          "From %s on there are few grafts, so the curve there is guesswork."
              .formatted(Words.amount(answer.thinFrom(), answer.unit())));
    }
    lines.add(
        "Other things are as in the records: wood kept long may also have been cut earlier, or by"
            + " other hands.");
    return lines;
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            answer.column().replace('_', '-') + "-curve",
            "Take along " + Words.column(answer.column()),
            AnswerColumn.FACTOR,
            AnswerColumn.VALUE,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.THIN);
    for (TakeCurve.Point p : answer.points()) {
      table.row(answer.column(), p.value(), p.take(), p.thin());
    }
    return table.build();
  }

  /** {@inheritDoc} The curve, and the counts. */
  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder counts =
        AnswerTable.of(
            answer.column().replace('_', '-') + "-counted",
            "Grafts counted along " + Words.column(answer.column()),
            AnswerColumn.FACTOR,
            AnswerColumn.VALUE_FROM,
            AnswerColumn.VALUE_TO,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH);
    for (TakeCurve.Range r : answer.counted()) {
      counts.row(answer.column(), r.from(), r.to(), r.tally(), r.counted());
    }
    return List.of(mainTable(), counts.build());
  }
}
