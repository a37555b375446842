package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeCounts;

/** Counted takes, in words. */
final class TakeCountsWords implements AnswerWords {

  private final TakeCounts answer;

  TakeCountsWords(TakeCounts answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question(), answer.column());
  }

  @Override
  public String headline() {
    TakeCount all = answer.total();
    return "%s of %s took, %s (likely %s)."
        .formatted(
            Words.count(all.takes()),
            Words.count(all.grafts(), "graft"),
            Words.percent(all.rate()),
            Words.percents(answer.range(all)));
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    if (answer.notRecorded() > 0) {
      lines.add(
          "%s without a recorded %s left out."
              .formatted(
                  Words.count(answer.notRecorded(), "graft"), Words.column(answer.column())));
    }
    lines.add(
        "Counts as they stand, nothing adjusted: lots can differ because their cultivars, hands or"
            + " seasons do.");
    return lines;
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(mainTable());
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "take-counts",
            "Counted takes by " + Words.column(answer.column()),
            AnswerColumn.LEVEL,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH);
    answer.levels().forEach(l -> table.row(l.name(), l.count(), answer.range(l.count())));
    return table.build();
  }
}
