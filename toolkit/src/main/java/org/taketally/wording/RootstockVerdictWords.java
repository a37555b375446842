package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.counts.Agreement;
import org.taketally.answers.verdict.RootstockVerdict;

/** Whether the rootstock matters, in words. */
final class RootstockVerdictWords implements AnswerWords {

  private final RootstockVerdict answer;

  RootstockVerdictWords(RootstockVerdict answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question(), answer.type().factor());
  }

  @Override
  public String headline() {
    String headline = new FactorVerdictWords(answer.type()).headline();
    boolean disagree =
        answer
            .byHand()
            .filter(view -> view.agreement().verdict() == Agreement.Verdict.DISAGREE)
            .isPresent();
    return disagree
        ? headline + " Counted by hand, cultivars disagree about it: look at each."
        : headline;
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>(new FactorVerdictWords(answer.type()).more());
    answer
        .condition()
        .ifPresent(
            condition ->
                lines.add(
                    "Beside it, stock condition. " + new FactorVerdictWords(condition).headline()));
    answer.pairings().ifPresent(pairings -> lines.add(new PairingsWords(pairings).headline()));
    answer.byHand().ifPresent(view -> lines.add(StratifiedWords.sentence(view)));
    answer.offType().ifPresent(line -> lines.add(sentence(line)));
    lines.add(
        "Take is not lasting union: stocks with equal take can still differ in growth, health and"
            + " how long the union holds, which these records don't show.");
    return lines;
  }

  /** What seedlings not true to type would do to the differences. */
  static String sentence(RootstockVerdict.OffType offType) {
    return "If the stocks are seedlings and only %s of them are true to type, a real difference looks smaller than it is: among stocks true to type the largest gap would be up to %s (likely under %s)."
        .formatted(
            Words.percents(offType.trueToType()),
            Words.points(offType.largestIfPure()),
            Words.points(offType.highIfPure()));
  }

  /** {@inheritDoc} Those of the stock's type, then stock condition, the view by hand, pairings. */
  @Override
  public List<AnswerTable> tables() {
    List<AnswerTable> tables = new ArrayList<>(new FactorVerdictWords(answer.type()).tables());
    answer
        .condition()
        .ifPresent(condition -> tables.addAll(new FactorVerdictWords(condition).tables()));
    answer.byHand().ifPresent(view -> tables.addAll(StratifiedWords.tables(view)));
    answer.pairings().ifPresent(pairings -> tables.addAll(new PairingsWords(pairings).tables()));
    return tables;
  }
}
