package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.effects.FactorImportance;

/** What goes with take, in words. */
final class FactorImportanceWords implements AnswerWords {

  /** A share so small that it only stands for a spread estimated as zero. */
  private static final double NOTHING = 1e-9;

  private final FactorImportance answer;

  FactorImportanceWords(FactorImportance answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    String from = ", from " + Words.count(answer.tally().grafts(), "graft") + ".";
    if (answer.factors().isEmpty()) {
      return "Nothing in these records varies that could move take" + from;
    }
    List<String> first =
        answer.factors().stream()
            .limit(3)
            .map(m -> Words.column(m.factor()) + " " + size(m))
            .toList();
    String rest =
        answer.factors().stream()
            .skip(3)
            .filter(FactorImportance.Importance::compared)
            .map(
                m ->
                    "; %s comes %s of %d %s"
                        .formatted(
                            Words.column(m.factor()),
                            Words.place(answer.factors().indexOf(m) + 1),
                            answer.factors().size(),
                            size(m)))
            .findFirst()
            .orElse("");
    return "What moves take most: " + Words.list(first) + rest + from;
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    if (!answer.factors().isEmpty()) {
      lines.add(
          "How far apart the takes of two grafts typically are that differ in one thing only, then"
              + " from its worst to its best, over the conditions in these records:");
    }
    answer.factors().forEach(importance -> lines.add(sentence(importance)));
    lines.add("This shows what goes with take here, which is not always what causes it.");
    return lines;
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(mainTable());
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "what-moves-take",
            "What moves take, largest first",
            AnswerColumn.FACTOR,
            AnswerColumn.LEVELS,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.BEST,
            AnswerColumn.WORST,
            AnswerColumn.LARGEST,
            AnswerColumn.LARGEST_LOW,
            AnswerColumn.LARGEST_HIGH,
            AnswerColumn.COMPARED);
    for (FactorImportance.Importance m : answer.factors()) {
      table.row(m.factor(), m.levels(), m.typical(), m.best(), m.worst(), m.span(), m.compared());
    }
    return table.build();
  }

  private static String size(FactorImportance.Importance importance) {
    return "(typically %s, likely %s)"
        .formatted(
            Words.points(importance.typical().value()),
            Words.points(importance.typical().interval()));
  }

  private static String sentence(FactorImportance.Importance importance) {
    String what = Words.sentence(Words.column(importance.factor()));
    if (importance.typical().high() < NOTHING) {
      return what + ": nothing seen of it; its spread is estimated as zero.";
    }
    if (importance.levels() == 2) {
      return "%s: %s (likely %s), from %s to %s."
          .formatted(
              what,
              Words.points(importance.typical().value()),
              Words.points(importance.typical().interval()),
              importance.worst(),
              importance.best());
    }
    return "%s: typically %s (likely %s); from %s to %s, %s (likely %s)."
        .formatted(
            what,
            Words.points(importance.typical().value()),
            Words.points(importance.typical().interval()),
            importance.worst(),
            importance.best(),
            Words.points(importance.span().value()),
            Words.points(importance.span().interval()));
  }
}
