package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.batches.LevelAgainstOthers;
import org.taketally.answers.batches.LevelAgainstOthers.Shared;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.answers.verdict.Verdict;

/** Whether one batch, day, bed or hand stands apart, in words. */
final class LevelAgainstOthersWords implements AnswerWords {

  private static final double ALL = 0.995;
  private static final int MOST_TIES = 2;

  private final LevelAgainstOthers answer;
  private final FactorVerdict verdict;
  private final String name;

  LevelAgainstOthersWords(LevelAgainstOthers answer) {
    this.answer = answer;
    this.verdict = answer.verdict();
    this.name = Words.level(answer.column(), answer.level());
  }

  @Override
  public String question() {
    return "Does %s take worse or better than the others?".formatted(name);
  }

  @Override
  public String headline() {
    Optional<Pair> pair = answer.difference();
    return "%s; from %s of it and %s of the others."
        .formatted(
            pair.map(this::compared)
                .orElse(
                    "Entangled: %s can't be told from what its grafts share, so no difference can be given"
                        .formatted(name)),
            Words.count(answer.tally().grafts(), "graft"),
            Words.count(answer.others().grafts()));
  }

  private String compared(Pair pair) {
    double difference = pair.difference().value();
    String worse = difference < 0 ? "worse" : "better";
    String size =
        "%s %s than the others (likely %s)"
            .formatted(
                Words.aboutPoints(difference),
                worse,
                Words.points((difference < 0 ? pair.turned() : pair).difference().interval()));
    String margin = Words.points(verdict.options().margin());
    return switch (verdict.verdict()) {
      case MATTERS -> "Yes, %s takes %s".formatted(name, size);
      case DIFFERS_UNSETTLED ->
          "Yes, though how much isn't settled: %s takes %s".formatted(name, size);
      case LESS_THAN_YOU_CARE_ABOUT ->
          "%s takes a little %s, by less than the %s you care about: %s"
              .formatted(Words.sentence(name), worse, margin, size);
      case NO_PRACTICAL_DIFFERENCE ->
          "No practical difference (within %s): %s takes %s".formatted(margin, name, size);
      case DEPENDS_ON_CULTIVAR ->
          "It depends on the cultivar: on average %s takes %s".formatted(name, size);
      case CANT_TELL_YET -> "Can't tell yet: %s takes %s".formatted(name, size);
      case ENTANGLED -> "Entangled with what its grafts share: %s takes %s".formatted(name, size);
    };
  }

  @Override
  public List<String> more() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "As counted, %s of %s took (%s), of the others %s of %s (%s)."
            .formatted(
                Words.count(answer.tally().takes()),
                Words.count(answer.tally().grafts(), "graft"),
                Words.percent(answer.tally().rate()),
                Words.count(answer.others().takes()),
                Words.count(answer.others().grafts()),
                Words.percent(answer.others().rate())));
    if (verdict.verdict() == Verdict.CANT_TELL_YET) {
      lines.add(
          "A batch has only so many grafts: what can't be told from them will not be told later,"
              + " unless grafts of it are still to be counted.");
    }
    lines.addAll(shared());
    verdict.confounding().tiesOfCompared().stream()
        .filter(tie -> tie.refuses() || tie.efficiency() < Confounding.WARN_BELOW)
        .limit(MOST_TIES)
        .forEach(tie -> lines.add("Mind: " + TieWords.sentence(tie)));
    return lines;
  }

  private List<String> shared() {
    if (answer.shared().isEmpty()) {
      return List.of(
          "Nothing else that is recorded sets its grafts apart: hands, days, stocks and cultivars"
              + " are mixed as elsewhere.");
    }
    List<String> lines = new ArrayList<>();
    answer.shared().forEach(shared -> lines.add(sentence(shared)));
    lines.add(
        "What its grafts share with few others is allowed for as far as the records can tell it"
            + " apart; what nobody else had can't be told from %s itself.".formatted(name));
    return lines;
  }

  private static String sentence(Shared shared) {
    String column = Words.beforeLevel(shared.column());
    String level =
        shared.level().startsWith(column) ? shared.level() : column + " " + shared.level();
    if (shared.alone() >= ALL) {
      return "Shared: all its grafts are at %s that no other graft has (most at %s)."
          .formatted(Words.levels(shared.column()), shared.level());
    }
    return "Shared: %s of its grafts have %s, %s of the others.%s"
        .formatted(
            Words.percent(shared.here()),
            level,
            Words.percent(shared.elsewhere()),
            shared.alone() > 0
                ? " %s are at %s that no other graft has."
                    .formatted(Words.percent(shared.alone()), Words.levels(shared.column()))
                : "");
  }

  @Override
  public List<AnswerTable> tables() {
    return List.of(compared(), sharedTable());
  }

  private AnswerTable compared() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "level-against-others",
            "%s against all others".formatted(Words.sentence(name)),
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.OTHER_LEVEL,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.EQUIVALENCE_LOW,
            AnswerColumn.EQUIVALENCE_HIGH,
            AnswerColumn.EQUIVALENT,
            AnswerColumn.CHANCE_BEYOND_MARGIN,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.OTHER_GRAFTS,
            AnswerColumn.OTHER_TAKES,
            AnswerColumn.OTHER_RAW_TAKE);
    answer
        .difference()
        .ifPresent(
            pair ->
                table.row(
                    answer.column(),
                    pair.level(),
                    pair.other(),
                    pair.difference(),
                    pair.equivalence(),
                    pair.equivalent(),
                    pair.probabilityBeyondMargin(),
                    answer.tally(),
                    answer.others()));
    return table.build();
  }

  private AnswerTable sharedTable() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "level-shares",
            "What grafts of %s share".formatted(name),
            AnswerColumn.FACTOR,
            AnswerColumn.LEVEL,
            AnswerColumn.SHARE_HERE,
            AnswerColumn.SHARE_ELSEWHERE,
            AnswerColumn.SHARE_ALONE);
    answer
        .shared()
        .forEach(s -> table.row(s.column(), s.level(), s.here(), s.elsewhere(), s.alone()));
    return table.build();
  }
}
