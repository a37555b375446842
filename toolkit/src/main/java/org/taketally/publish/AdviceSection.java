package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.taketally.answers.advice.NoAdvice;
import org.taketally.answers.advice.NoAdvice.Reason;
import org.taketally.answers.advice.SeasonAdvice;
import org.taketally.answers.effects.Band;
import org.taketally.plan.order.UsualTakes;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;
import org.taketally.records.columns.RecordColumn;
import org.taketally.wording.season.AdviceWords;

/** What to do differently next season. */
final class AdviceSection {

  private static final String ROOTSTOCK = RecordColumn.ROOTSTOCK.columnName();

  private final PublicAnswers answers;
  private final SeasonAdvice advice;
  private final AdviceWords words;

  private AdviceSection(PublicAnswers answers, AdviceWords words) {
    this.answers = answers;
    this.advice = answers.advice();
    this.words = words;
  }

  static Section of(PublicAnswers answers, AdviceWords words) {
    return new Section("next-season", words.heading(), new AdviceSection(answers, words).blocks());
  }

  private List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(advice.steps().isEmpty() ? new Paragraph(words.none()) : new Table(steps()));
    nothingAdvised().forEach(sentence -> blocks.add(new Paragraph(sentence)));
    spares().ifPresent(sentence -> blocks.add(new Paragraph(sentence)));
    blocks.add(new Paragraph(words.limits()));
    return blocks;
  }

  private Grid steps() {
    return new Grid(
        words.caption(), words.headings(), advice.steps().stream().map(words::row).toList(), true);
  }

  /** Rootstocks have a sentence of their own. */
  private static Stream<List<String>> apart(List<String> columns) {
    return Stream.of(
            columns.stream().filter(ROOTSTOCK::equals).toList(),
            columns.stream().filter(column -> !ROOTSTOCK.equals(column)).toList())
        .filter(some -> !some.isEmpty());
  }

  private List<String> nothingAdvised() {
    return Stream.of(Reason.values())
        .filter(reason -> !columns(reason).isEmpty())
        .flatMap(
            reason -> apart(columns(reason)).map(columns -> words.nothingAdvised(reason, columns)))
        .toList();
  }

  private List<String> columns(Reason reason) {
    return advice.none().stream()
        .filter(none -> none.reason() == reason)
        .map(NoAdvice::factor)
        .filter(factor -> !factor.equals(SeasonFacts.GRAFTER))
        .toList();
  }

  private OptionalInt enough(String cultivar) {
    return answers
        .usual()
        .map(usual -> usual.cultivars().get(cultivar))
        .map(UsualTakes.Usual::graftsForTrees)
        .orElse(OptionalInt.empty());
  }

  private Optional<String> spares() {
    return answers.difficulty().stream()
        .flatMap(difficulty -> difficulty.cultivars().stream())
        .filter(c -> c.band() == Band.HARD)
        .findFirst()
        .map(c -> words.spare(c, enough(c.cultivar())));
  }
}
