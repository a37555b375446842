package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.Estimate;
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
    String grafts = Words.count(answer.tally().grafts(), "graft");
    String column = Words.column(answer.column());
    if (answer.points().isEmpty()) {
      return "These records can't show how take changes with %s: the grafts are alike in it, or the model leaves it out; %s."
          .formatted(column, grafts);
    }
    return answer
        .change()
        .map(
            change ->
                ends(change) + change.turn().map(this::turn).orElse("") + "; from " + grafts + ".")
        .orElse(
            "There are too few grafts near any one value to say how take changes with %s; %s."
                .formatted(column, grafts));
  }

  private String ends(TakeCurve.Change change) {
    Estimate difference = change.difference();
    String along =
        "From %s to %s (%s)"
            .formatted(
                Words.amount(change.from().value(), ""),
                Words.amount(change.to().value(), answer.unit()),
                Words.column(answer.column()));
    String size =
        "from %s to %s"
            .formatted(
                Words.percent(change.from().take().value()),
                Words.percent(change.to().take().value()));
    if (difference.high() < 0) {
      return "%s take falls by %s (likely %s), %s"
          .formatted(
              along,
              Words.aboutPoints(difference.value()),
              Words.below(difference.interval()),
              size);
    }
    if (difference.low() > 0) {
      return "%s take rises by %s (likely %s), %s"
          .formatted(
              along,
              Words.aboutPoints(difference.value()),
              Words.points(difference.interval()),
              size);
    }
    String range = Words.points(difference.interval());
    double margin = answer.options().margin();
    if (Math.max(-difference.low(), difference.high()) < margin) {
      return "%s take changes by less than the %s you care about (likely %s)"
          .formatted(along, Words.points(margin), range);
    }
    return "%s these records can't tell whether take falls or rises (likely %s)"
        .formatted(along, range);
  }

  private String turn(TakeCurve.Turn turn) {
    return ", but it is %s between them, near %s (%s)"
        .formatted(
            turn.highest() ? "highest" : "lowest",
            Words.amount(turn.at().value(), answer.unit()),
            Words.take(turn.at().take()));
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
