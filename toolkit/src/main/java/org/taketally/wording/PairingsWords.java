package org.taketally.wording;

import java.util.List;
import org.taketally.answers.effects.Pairings;

/** Pairings that do worse than expected, in words. */
final class PairingsWords implements AnswerWords {

  private final Pairings answer;

  PairingsWords(Pairings answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    if (answer.pairings().isEmpty()) {
      return "No single pairing was looked at: the model takes each cultivar to behave alike on every rootstock; %s."
          .formatted(Words.count(answer.tally().grafts(), "graft"));
    }
    String from =
        " (%s, %s)"
            .formatted(
                Words.count(answer.pairings().size(), "pairing"),
                Words.count(answer.tally().grafts(), "graft"));
    if (answer.flagged().isEmpty()) {
      return "No cultivar is shown to fail on one rootstock alone by more than %s%s."
          .formatted(Words.points(answer.options().margin()), from);
    }
    return "Worse than cultivar and rootstock alone lead you to expect: "
        + Words.list(answer.flagged().stream().map(PairingsWords::inWords).toList())
        + "; about %s of such a list are false alarms%s."
            .formatted(Words.percent(answer.falseShare()), from);
  }

  @Override
  public List<String> more() {
    return List.of(
        "A pairing's own effect is drawn toward none, the more the fewer its grafts. It speaks of"
            + " take only: a union that took can still fail in later years.");
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(mainTable());
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "pairings",
            "Cultivars on rootstocks, worst deficit first",
            AnswerColumn.CULTIVAR,
            AnswerColumn.ROOTSTOCK,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.EXPECTED_TAKE,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.CHANCE_WORSE,
            AnswerColumn.FLAGGED);
    for (Pairings.Pairing p : answer.pairings()) {
      table.row(
          p.cultivar(),
          p.rootstock(),
          p.tally(),
          p.counted(),
          p.expected(),
          p.take(),
          p.difference(),
          p.probabilityWorse(),
          p.flagged());
    }
    return table.build();
  }

  private static String inWords(Pairings.Pairing p) {
    return "%s on %s takes %s where %s was expected"
        .formatted(p.cultivar(), p.rootstock(), Words.take(p.take()), Words.percent(p.expected()));
  }
}
