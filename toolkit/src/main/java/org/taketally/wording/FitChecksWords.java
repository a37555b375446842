package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.checks.FitChecks;

/** Whether the model fits, in words. */
final class FitChecksWords implements AnswerWords {

  private final FitChecks answer;

  FitChecksWords(FitChecks answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    List<String> wrong = names(FitChecks.State.WRONG);
    List<String> look = names(FitChecks.State.LOOK);
    int blind = names(FitChecks.State.NOT_CHECKABLE).size();
    String of =
        "%s on %s%s"
            .formatted(
                Words.count(answer.checks().size() - blind, "check"),
                Words.count(answer.tally().grafts(), "graft"),
                blind == 0 ? "" : ", %d more can't be made on them".formatted(blind));
    if (!wrong.isEmpty()) {
      return "The model doesn't fit in every respect: %s; %s.".formatted(Words.list(wrong), of);
    }
    if (!look.isEmpty()) {
      return "The model fits well enough, but look at: %s; %s.".formatted(Words.list(look), of);
    }
    return (blind == 0
            ? "Nothing speaks against the model; %s."
            : "Nothing that can be checked speaks against the model; %s.")
        .formatted(of);
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    for (FitChecks.Check check : answer.checks()) {
      CheckWords words = new CheckWords(check);
      lines.add(
          "%s: %s%s"
              .formatted(
                  Words.sentence(words.name()),
                  words.finding(),
                  words.remedy().isEmpty() ? "" : " " + words.remedy()));
    }
    return lines;
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "fit-checks",
            "Checks of the fit, worst first",
            AnswerColumn.CHECK,
            AnswerColumn.STATE,
            AnswerColumn.VALUE,
            AnswerColumn.FINDING,
            AnswerColumn.REMEDY);
    for (FitChecks.Check c : answer.checks()) {
      CheckWords words = new CheckWords(c);
      table.row(words.name(), Names.of(c.state()), c.value(), words.finding(), words.remedy());
    }
    return table.build();
  }

  /** {@inheritDoc} The checks, and calibration by tenths. */
  @Override
  public List<AnswerTable> tables() {
    AnswerTable.Builder calibration =
        AnswerTable.of(
            "calibration",
            "Predicted against counted take, by tenths of the prediction",
            AnswerColumn.PREDICTED,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE);
    for (FitChecks.Tenth t : answer.tenths()) {
      calibration.row(t.predicted(), t.tally());
    }
    return List.of(mainTable(), calibration.build());
  }

  private List<String> names(FitChecks.State state) {
    return answer.checks().stream()
        .filter(check -> check.state() == state)
        .map(check -> new CheckWords(check).name())
        .toList();
  }
}
