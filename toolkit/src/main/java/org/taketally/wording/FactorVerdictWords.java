package org.taketally.wording;

import java.util.List;
import org.taketally.answers.Estimate;
import org.taketally.answers.verdict.FactorVerdict;

/** Whether a column matters, in words. */
final class FactorVerdictWords implements AnswerWords {

  private final FactorVerdict answer;
  private final List<String> reasons;

  FactorVerdictWords(FactorVerdict answer) {
    this.answer = answer;
    this.reasons = VerdictReasons.of(answer);
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question(), answer.factor());
  }

  @Override
  public String headline() {
    return reasons.get(0);
  }

  @Override
  public List<String> more() {
    return reasons.subList(1, reasons.size());
  }

  private AnswerTable pairTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            answer.factor().replace('_', '-') + "-pairs",
            "Every pair of levels of " + Words.column(answer.factor()),
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.OTHER_LEVEL,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.EQUIVALENCE_LOW,
            AnswerColumn.EQUIVALENCE_HIGH,
            AnswerColumn.EQUIVALENT,
            AnswerColumn.CHANCE_BEYOND_MARGIN);
    for (FactorVerdict.Pair pair : answer.size().map(FactorVerdict.Size::pairs).orElse(List.of())) {
      table.row(
          answer.factor(),
          pair.level(),
          pair.other(),
          pair.difference(),
          pair.equivalence(),
          pair.equivalent(),
          pair.probabilityBeyondMargin());
    }
    return table.build();
  }

  /** {@inheritDoc} Pairs, levels, tests. */
  @Override
  public List<AnswerTable> tables() {
    return List.of(pairTable(), levelTable(), testTable());
  }

  private AnswerTable levelTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            answer.factor().replace('_', '-') + "-levels",
            "Levels of " + Words.column(answer.factor()) + ", lowest take first",
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.STANDS_OUT);
    for (FactorVerdict.LevelTake level : answer.levels()) {
      table.row(
          answer.factor(),
          level.level(),
          level.tally(),
          level.counted(),
          level.take().map(Estimate::value).orElse(null),
          level.take().map(Estimate::low).orElse(null),
          level.take().map(Estimate::high).orElse(null),
          level.standsOut());
    }
    return table.build();
  }

  private AnswerTable testTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            answer.factor().replace('_', '-') + "-tests",
            "Evidence that " + Words.column(answer.factor()) + " makes any difference",
            AnswerColumn.FACTOR,
            AnswerColumn.CHECK,
            AnswerColumn.METHOD,
            AnswerColumn.STATISTIC,
            AnswerColumn.DEGREES,
            AnswerColumn.P_VALUE);
    for (FactorVerdict.Test test : answer.tests()) {
      table.row(
          answer.factor(),
          name(test.question()),
          method(test),
          test.statistic(),
          test.degrees(),
          test.pValue());
    }
    return table.build();
  }

  private static String name(FactorVerdict.TestQuestion question) {
    return switch (question) {
      case ANY_DIFFERENCE -> "any difference between levels";
    };
  }

  private static String method(FactorVerdict.Test test) {
    return switch (test.method()) {
      case ALL_PAIRS_AT_ONCE -> "most extreme of all pairs, standard errors, by draws of the fit";
      case DEALT_WITHIN_GROUPS ->
          "levels dealt out anew %d times among grafts made together".formatted(test.simulated());
      case F_BY_GROUPS -> "F with the degrees of freedom of the groups between which levels change";
    };
  }
}
