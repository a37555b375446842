package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.answers.verdict.MarginCost;

/** What a drop in take costs, in words. */
final class MarginCostWords implements AnswerWords {

  private final MarginCost answer;

  MarginCostWords(MarginCost answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    return "At a take of %s a saleable tree costs %s; %s less make it %s, %s dearer."
        .formatted(
            Words.percent(answer.take()),
            money(answer.now().perTree()),
            Words.points(answer.margin()),
            money(answer.atMargin().perTree()),
            Words.percent(answer.atMargin().dearerBy()));
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    if (answer.pricePerTree().isPresent()) {
      lines.add(left(answer.pricePerTree().getAsDouble()));
    }
    lines.add(counted());
    lines.add(
        "Choose as margin the smallest drop that would make you change stocks. Missed orders,"
            + " wasted budwood and stocks spoilt by a failed graft come on top.");
    return lines;
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(mainTable());
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "margin-cost",
            "Cost of a saleable tree if take drops by a margin",
            AnswerColumn.MARGIN,
            AnswerColumn.TAKE,
            AnswerColumn.COST_PER_TREE,
            AnswerColumn.DEARER_BY,
            AnswerColumn.LEFT_PER_GRAFT);
    for (MarginCost.Drop drop : answer.drops()) {
      table.row(
          drop.points(),
          drop.take(),
          drop.perTree(),
          drop.dearerBy(),
          drop.leftPerGraft().orElse(Double.NaN));
    }
    return table.build();
  }

  private String left(double price) {
    return "Sold at %s a tree, each graft made leaves %s at that take and %s at %s less."
        .formatted(
            money(price),
            money(answer.now().leftPerGraft().orElseThrow()),
            money(answer.atMargin().leftPerGraft().orElseThrow()),
            Words.points(answer.margin()));
  }

  private String counted() {
    return answer.lateLoss() > 0
        ? "%s of the takes are supposed lost before sale."
            .formatted(Words.percent(answer.lateLoss()))
        : "Every take is supposed to be sold: trees lost after the count make each tree dearer"
            + " still.";
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, "%,.2f", amount);
  }
}
