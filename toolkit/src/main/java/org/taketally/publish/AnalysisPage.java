package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.answers.counts.TakeMeaning;
import org.taketally.model.FitWarning;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Fold;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Provenance;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.TakeMeaningWords;
import org.taketally.wording.UnansweredWords;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/**
 * Every answer with its figures and tables, for those who work with the records. Nothing is held
 * back for privacy, and the page says so; it is not the one to publish.
 */
public final class AnalysisPage {

  private static final String STAMP = "Not for publication";

  private final Page page;

  private AnalysisPage(Page page) {
    this.page = page;
  }

  /**
   * The page of an analysis.
   *
   * @param records as read
   * @param analysis answers from a fit
   * @return the page
   */
  public static AnalysisPage of(GraftRecords records, Analysis analysis) {
    List<Answer> answers = analysis.answers();
    List<AnswerWords> words = answers.stream().map(Wording::of).toList();
    List<Section> sections = new ArrayList<>();
    sections.add(inShort(words));
    for (int i = 0; i < answers.size(); i++) {
      sections.add(section(answers.get(i), words.get(i), i + 1));
    }
    if (!analysis.unanswered().isEmpty()) {
      sections.add(absent(analysis));
    }
    sections.add(behind(records, analysis));
    sections.add(ClosingSections.howToRead());
    String lead =
        "Everything these records answer, from %s. It names cultivars, stocks and small groups that a"
                .formatted(Words.count(analysis.fit().cells().graftsTotal(), "assessed graft"))
            + " published page would not.";
    return new AnalysisPage(
        new Page("What the graft records say", lead, STAMP, sections, "Made with Taketally."));
  }

  private static Section inShort(List<AnswerWords> answers) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Callout(answers.get(0).headline()));
    if (answers.size() > 1) {
      blocks.add(Bullets.of(answers.stream().skip(1).map(AnswerWords::headline).toList()));
    }
    return new Section("in-short", "In short", blocks);
  }

  private static Section section(Answer answer, AnswerWords words, int number) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Callout(words.headline()));
    blocks.addAll(FigureBlocks.of(answer));
    words.more().forEach(line -> blocks.add(new Paragraph(line)));
    List<Block> tables =
        words.tables().stream()
            .filter(table -> !table.rows().isEmpty())
            .map(table -> (Block) Block.Answers.of(table))
            .toList();
    if (!tables.isEmpty()) {
      blocks.add(new Fold(new Section("numbers-" + number, "The numbers", tables)));
    }
    return new Section("answer-" + number, words.question(), blocks);
  }

  private static Section absent(Analysis analysis) {
    return new Section(
        "not-answered",
        "What these records don't answer",
        List.of(
            Bullets.of(analysis.unanswered().stream().map(UnansweredWords::sentence).toList())));
  }

  private static Section behind(GraftRecords records, Analysis analysis) {
    Provenance provenance = records.provenance();
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Paragraph(
            "%s read, %s used, %s set aside; %s assessed, %s of them took."
                .formatted(
                    Words.count(provenance.rowsRead(), "row"),
                    Words.count(provenance.rowsKept()),
                    Words.count(provenance.rowsSetAside()),
                    Words.count(records.grafts(), "graft"),
                    Words.count(records.takes()))));
    blocks.add(new Paragraph(TakeMeaningWords.of(TakeMeaning.of(records))));
    blocks.add(Bullets.of(provenance.sources()));
    List<FitWarning> warnings = analysis.fit().warnings();
    blocks.add(
        warnings.isEmpty()
            ? new Paragraph("The fit raised no warning.")
            : Bullets.of(warnings.stream().map(w -> "The fit warns: " + w.sentence()).toList()));
    return new Section("behind", "What it rests on", blocks);
  }

  /**
   * As one file of HTML: figures inside, no script, nothing fetched.
   *
   * @return the page
   */
  public String html() {
    return PageWriter.html(page);
  }
}
