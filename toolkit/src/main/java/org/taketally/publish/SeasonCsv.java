package org.taketally.publish;

import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.LevelTake;
import org.taketally.files.ControlSigns;
import org.taketally.files.Csv;
import org.taketally.publish.privacy.PublishedTable;
import org.taketally.publish.privacy.PublishedTable.Entry;
import org.taketally.wording.AnswerColumn;
import org.taketally.wording.Names;
import org.taketally.wording.pages.WorkingPageWords;

/** The numbers of a season page as CSV, in the columns of all answer tables. */
final class SeasonCsv {

  private static final List<AnswerColumn> COLUMNS =
      List.of(
          AnswerColumn.FACTOR,
          AnswerColumn.LEVEL,
          AnswerColumn.SEASON,
          AnswerColumn.GRAFTS,
          AnswerColumn.TAKES,
          AnswerColumn.TAKE,
          AnswerColumn.TAKE_LOW,
          AnswerColumn.TAKE_HIGH,
          AnswerColumn.BAND);

  private final SeasonFacts facts;
  private final PublicAnswers answers;

  SeasonCsv(SeasonFacts facts, PublicAnswers answers) {
    this.facts = facts;
    this.answers = answers;
  }

  String write() {
    StringWriter out = new StringWriter();
    try (Csv csv = Csv.to(out)) {
      csv.add(COLUMNS.stream().map(AnswerColumn::columnName).toList());
      facts.seasonTable().ifPresent(table -> rows(csv, "season", "", table));
      facts.cultivarTable().ifPresent(table -> rows(csv, "cultivar", "", table));
      facts.latestTable().ifPresent(table -> rows(csv, "cultivar", facts.latest(), table));
      facts.rootstockTable().ifPresent(table -> rows(csv, "rootstock", "", table));
    }
    return out.toString();
  }

  private void rows(Csv csv, String factor, String season, PublishedTable table) {
    for (Entry entry : table.entries()) {
      TakeCount count = facts.count(entry);
      String level = entry.merged() ? WorkingPageWords.others(factor) : entry.levels().get(0);
      Optional<Estimate> take =
          entry.merged() || !season.isEmpty() ? Optional.empty() : take(factor, level);
      csv.add(
          factor,
          ControlSigns.neutral(level),
          ControlSigns.neutral(season),
          Long.toString(count.grafts()),
          Long.toString(count.takes()),
          take.map(e -> Double.toString(e.value())).orElse(""),
          take.map(e -> Double.toString(e.low())).orElse(""),
          take.map(e -> Double.toString(e.high())).orElse(""),
          take.isPresent() ? band(factor, level) : "");
    }
  }

  private Optional<Estimate> take(String factor, String level) {
    return switch (factor) {
      case "cultivar" -> cultivar(level).map(CultivarTake::take);
      case "rootstock" ->
          answers.rootstock().map(FactorVerdict::levels).orElse(List.of()).stream()
              .filter(l -> l.level().equals(level))
              .findFirst()
              .flatMap(LevelTake::take);
      default -> Optional.empty();
    };
  }

  private Optional<CultivarTake> cultivar(String name) {
    return answers.difficulty().map(Difficulty::cultivars).orElse(List.of()).stream()
        .filter(c -> c.cultivar().equals(name))
        .findFirst();
  }

  private String band(String factor, String level) {
    return factor.equals("cultivar") ? cultivar(level).map(c -> Names.of(c.band())).orElse("") : "";
  }
}
