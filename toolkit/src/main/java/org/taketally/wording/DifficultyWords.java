package org.taketally.wording;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;

/** How hard each cultivar is, in words. */
final class DifficultyWords implements AnswerWords {

  private static final int MOST_HARDEST = 10;
  private static final int MOST_NAMES = 30;

  private final Difficulty answer;

  DifficultyWords(Difficulty answer) {
    this.answer = answer;
  }

  @Override
  public String question() {
    return QuestionWords.of(answer.question());
  }

  @Override
  public String headline() {
    String from = ", from " + Words.count(answer.tally().grafts(), "graft") + ".";
    if (answer.cultivars().size() == 1) {
      return "These records hold one cultivar only: %s takes %s"
              .formatted(
                  answer.cultivars().get(0).cultivar(),
                  Words.take(answer.cultivars().get(0).take()))
          + from;
    }
    List<Difficulty.CultivarTake> hardest =
        answer.cultivars().stream()
            .filter(c -> c.probabilityHardestQuarter() >= answer.options().bands().sure())
            .toList();
    if (hardest.isEmpty()) {
      Difficulty.CultivarTake low = answer.cultivars().get(0);
      Difficulty.CultivarTake high = answer.cultivars().get(answer.cultivars().size() - 1);
      return "No cultivar of the %d surely belongs to the hardest quarter: estimates run from %s %s to %s %s"
              .formatted(
                  answer.cultivars().size(),
                  low.cultivar(),
                  Words.take(low.take()),
                  high.cultivar(),
                  Words.take(high.take()))
          + from;
    }
    return "Hardest of %d cultivars: %s"
            .formatted(
                answer.cultivars().size(),
                Words.first(
                    hardest.stream()
                        .map(c -> c.cultivar() + " takes " + Words.take(c.take()))
                        .toList(),
                    MOST_HARDEST))
        + from;
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    for (Band band : Band.values()) {
      List<String> names =
          answer.cultivars().stream()
              .filter(c -> c.band() == band)
              .map(Difficulty.CultivarTake::cultivar)
              .toList();
      if (!names.isEmpty()) {
        lines.add(bandLine(band) + ": " + Words.first(names, MOST_NAMES) + ".");
      }
    }
    lines.add(
        "Takes are what each cultivar would have shown in the mix of conditions of all these"
            + " records; \"standard\" means "
            + standard()
            + ".");
    answer.cultivars().stream()
        .max(Comparator.comparingDouble(Difficulty.CultivarTake::drawnIn))
        .filter(c -> c.drawnIn() >= 0.3)
        .ifPresent(
            c ->
                lines.add(
                    "Few grafts say little, so estimates are drawn toward the middle: that of %s, with %s, by %s of the way."
                        .formatted(
                            c.cultivar(),
                            Words.count(c.tally().grafts(), "graft"),
                            Words.percent(c.drawnIn()))));
    answer.within().ifPresent(within -> lines.add(within(within)));
    lines.add(
        "Take at assessment is not the tree's later health, nor its yield: a graft that took can"
            + " still fail in later years.");
    return lines;
  }

  @Override
  public List<AnswerTable> tables() {
    List<AnswerTable> tables = new ArrayList<>(List.of(mainTable()));
    answer.within().ifPresent(within -> tables.add(withinTable(within)));
    return tables;
  }

  /** What a comparison within hands and days says. */
  private String within(Difficulty.Within within) {
    String groups = Words.list(within.groups().stream().map(Words::levels).toList());
    List<Difficulty.CultivarTake> other = answer.otherWithin();
    if (other.isEmpty()) {
      return "The %s used cultivars unevenly; compared within the same %s only, no cultivar's take is surely another one."
          .formatted(groups, groups);
    }
    return "The %s used cultivars unevenly. Compared within the same %s only: %s. Part of what shows above goes with who grafted them, when or where."
        .formatted(
            groups,
            groups,
            Words.first(
                other.stream()
                    .map(
                        c ->
                            c.cultivar() + " takes " + Words.take(within.takes().get(c.cultivar())))
                    .toList(),
                MOST_HARDEST));
  }

  private AnswerTable mainTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "difficulty",
            "Cultivars, hardest first",
            AnswerColumn.CULTIVAR,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.STANDARD_TAKE,
            AnswerColumn.STANDARD_LOW,
            AnswerColumn.STANDARD_HIGH,
            AnswerColumn.DRAWN_IN,
            AnswerColumn.RANK,
            AnswerColumn.RANK_LOW,
            AnswerColumn.RANK_HIGH,
            AnswerColumn.HARDEST_QUARTER,
            AnswerColumn.BAND);
    for (Difficulty.CultivarTake c : answer.cultivars()) {
      table.row(
          c.cultivar(),
          c.tally(),
          c.counted(),
          c.take(),
          c.standardTake(),
          c.drawnIn(),
          c.rank(),
          c.probabilityHardestQuarter(),
          Names.of(c.band()));
    }
    return table.build();
  }

  private AnswerTable withinTable(Difficulty.Within within) {
    AnswerTable.Builder table =
        AnswerTable.of(
            "difficulty-within",
            "Cultivars within the same "
                + Words.list(within.groups().stream().map(Words::levels).toList()),
            AnswerColumn.CULTIVAR,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH);
    answer.cultivars().stream()
        .filter(c -> within.takes().containsKey(c.cultivar()))
        .forEach(c -> table.row(c.cultivar(), within.takes().get(c.cultivar())));
    return table.build();
  }

  private String bandLine(Band band) {
    AnswerOptions.Bands limits = answer.options().bands();
    String sure = "at least " + Words.percent(limits.sure()) + " sure";
    String hardBelow = Words.percent(limits.hardBelow());
    String easyFrom = Words.percent(limits.easyFrom());
    return switch (band) {
      case EASY -> "Easy (%s: %s or more)".formatted(sure, easyFrom);
      case MIDDLING -> "Middling (%s: %s to %s)".formatted(sure, hardBelow, easyFrom);
      case HARD -> "Hard (%s: under %s)".formatted(sure, hardBelow);
      case CANT_TELL -> "Can't tell (too near a limit to be that sure)";
    };
  }

  /** The standard conditions, e.g. method cleft, storage days 4. */
  private String standard() {
    return answer.standard().isEmpty()
        ? "the middle of everything that varies"
        : answer.standard().stream().map(Names::of).collect(Collectors.joining(", "));
  }
}
