package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.effects.Grafters;

/** Hands compared, in words. */
final class GraftersWords implements AnswerWords {

  private final Grafters answer;

  GraftersWords(Grafters answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    if (answer.grafters().size() < 2) {
      return "These records can't part the hand from the wood: they name fewer than two grafters, or the model leaves them out; %s."
          .formatted(Words.count(answer.tally().grafts(), "graft"));
    }
    return "Swapping the hand typically moves take by %s (likely %s) over these %d grafters, had all grafted the same mix; from %s."
        .formatted(
            Words.points(answer.typical().value()),
            Words.points(answer.typical().interval()),
            answer.grafters().size(),
            Words.count(answer.tally().grafts(), "graft"));
  }

  @Override
  public List<String> more() {
    if (answer.grafters().size() < 2) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    answer.grafters().stream()
        .filter(g -> g.difference().high() < 0)
        .forEach(
            g ->
                lines.add(
                    "%s: %s below the average hand (likely %s), from %s."
                        .formatted(
                            Words.sentence(g.shownAs()),
                            Words.points(g.difference().value()),
                            Words.below(g.difference().interval()),
                            Words.count(g.tally().grafts(), "graft"))));
    if (!answer.named()) {
      lines.add("Grafters are shown by letters dealt out at random.");
    }
    lines.add(
        "A lower figure may come from the jobs given to a person, where these weren't recorded.");
    return lines;
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(mainTable());
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "grafters",
            "Grafters, highest adjusted take first",
            AnswerColumn.GRAFTER,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH);
    for (Grafters.GrafterTake g : answer.grafters()) {
      table.row(g.shownAs(), g.tally(), g.counted(), g.take(), g.difference());
    }
    return table.build();
  }
}
