package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Cautions;
import org.taketally.publish.Block.Fold;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.terms.Severity;
import org.taketally.wording.season.ClosingWords;

/** Cautions, how to read the page, and where its numbers come from. */
final class ClosingSections {

  private ClosingSections() {}

  static Section cautions(ClosingWords words) {
    return new Section("take-care", words.takeCare(), List.of(Cautions.of(words.cautions())));
  }

  static Section howToRead(ClosingWords words) {
    return new Section("how-to-read", words.howToRead(), List.of(Bullets.of(words.reading())));
  }

  static Section aboutTheNumbers(SeasonFacts facts, ClosingWords words) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraph(words.rows(facts.records().provenance(), looks(facts))));
    blocks.add(new Paragraph(privacy(facts, words)));
    overTime(facts, words).forEach(sentence -> blocks.add(new Paragraph(sentence)));
    if (!facts.options().sendTo().isBlank()) {
      blocks.add(new Paragraph(words.sendTo(facts.options().sendTo())));
    }
    blocks.add(
        new Fold(new Section("methods", words.methods(), List.of(new Paragraph(words.method())))));
    return new Section("about", words.about(), blocks);
  }

  private static long looks(SeasonFacts facts) {
    return facts.records().problems().stream()
        .filter(problem -> problem.severity() == Severity.CHECK)
        .count();
  }

  /** What mustn't be published twice, and what was held back because of earlier pages. */
  private static List<String> overTime(SeasonFacts facts, ClosingWords words) {
    List<String> sentences = new ArrayList<>();
    if (facts.joint().isEmpty() && facts.options().before().pages().isEmpty()) {
      sentences.add(words.publisher());
    }
    if (facts.heldBack() > 0) {
      sentences.add(words.heldBack(facts.heldBack()));
    }
    if (!facts.changedSeasons().isEmpty()) {
      sentences.add(words.changedSince(facts.changedSeasons()));
    }
    return sentences;
  }

  private static String privacy(SeasonFacts facts, ClosingWords words) {
    if (facts.joint().isPresent()) {
      return words.jointOnly(facts.evidence().namesMembers());
    }
    return words.privacy(facts.rule(), facts.evidence().unnamedGrafts());
  }
}
