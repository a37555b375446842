package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.confounding.Confounding;

/** What was compared with what, in words. */
final class ConfoundingWords implements AnswerWords {

  private final Confounding answer;

  ConfoundingWords(Confounding answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    String what = Words.column(answer.compared());
    int levels = answer.groups().stream().mapToInt(group -> group.levels().size()).sum();
    if (levels < 2) {
      return "These records hold only one level of %s: there is nothing to compare it with."
          .formatted(what);
    }
    if (answer.comparable()) {
      String form =
          acrossBatches()
              ? "%s levels of %s can be compared, but only across grafting days, blocks and the like: within one of these, once everything else recorded is allowed for, %s of the information about their differences is left (%s)."
              : "%s levels of %s can be compared: %s of the information about their differences is left once everything else recorded is allowed for (%s).";
      return form.formatted(
          levels == 2 ? "Both" : "All " + levels,
          what,
          Words.percent(answer.efficiency()),
          Words.count(answer.grafts(), "graft"));
    }
    List<String> parts = new ArrayList<>();
    answer.groups().forEach(group -> parts.add(Words.list(group.levels())));
    return "The levels of %s fall into %d groups that these records can't compare with each other: "
            .formatted(what, answer.groups().size())
        + String.join("; ", parts)
        + ".";
  }

  /** Levels that batches keep apart still meet across them, at the cost of what batches did. */
  private boolean acrossBatches() {
    return answer.efficiency() < Confounding.ENTANGLED_BELOW;
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    if (answer.comparable() && answer.efficiency() < Confounding.WARN_BELOW) {
      lines.add(
          "That is little: the comparison rests on few cultivars, hands or seasons that had more"
              + " than one %s.".formatted(Words.column(answer.compared())));
    }
    answer.ties().forEach(tie -> lines.add(TieWords.sentence(tie)));
    return lines;
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(mainTable());
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "entanglement",
            "What hangs together in these records",
            AnswerColumn.FACTOR,
            AnswerColumn.COMPARED_WITHIN,
            AnswerColumn.EFFICIENCY,
            AnswerColumn.REFUSES,
            AnswerColumn.FINDING);
    for (Confounding.Tie tie : answer.ties()) {
      table.row(tie.factor(), tie.other(), tie.efficiency(), tie.refuses(), TieWords.sentence(tie));
    }
    return table.build();
  }
}
