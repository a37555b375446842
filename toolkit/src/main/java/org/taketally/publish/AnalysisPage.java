package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.model.FitWarning;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Fold;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.records.GraftRecords;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.UnansweredWords;
import org.taketally.wording.Wording;
import org.taketally.wording.language.Language;
import org.taketally.wording.pages.AnalysisPageWords;
import org.taketally.wording.pages.WorkingPageWords;
import org.taketally.wording.season.SeasonWords;

/**
 * Every answer with its figures and tables, for those who work with the records. Nothing is held
 * back for privacy, and the page says so; it is not the one to publish.
 */
public final class AnalysisPage {

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
    sections.add(ClosingSections.howToRead(SeasonWords.in(Language.ENGLISH).closing()));
    return new AnalysisPage(
        new Page(
            AnalysisPageWords.TITLE,
            AnalysisPageWords.lead(analysis.fit().cells().graftsTotal()),
            AnalysisPageWords.STAMP,
            sections,
            WorkingPageWords.FOOTER));
  }

  private static Section inShort(List<AnswerWords> answers) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Callout(answers.get(0).headline()));
    if (answers.size() > 1) {
      blocks.add(Bullets.of(answers.stream().skip(1).map(AnswerWords::headline).toList()));
    }
    return new Section("in-short", WorkingPageWords.IN_SHORT, blocks);
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
      blocks.add(new Fold(new Section("numbers-" + number, AnalysisPageWords.NUMBERS, tables)));
    }
    return new Section("answer-" + number, words.question(), blocks);
  }

  private static Section absent(Analysis analysis) {
    return new Section(
        "not-answered",
        AnalysisPageWords.NOT_ANSWERED,
        List.of(
            Bullets.of(analysis.unanswered().stream().map(UnansweredWords::sentence).toList())));
  }

  private static Section behind(GraftRecords records, Analysis analysis) {
    List<Block> blocks = new ArrayList<>();
    AnalysisPageWords.restsOn(records).forEach(text -> blocks.add(new Paragraph(text)));
    blocks.add(Bullets.of(records.provenance().sources()));
    List<FitWarning> warnings = analysis.fit().warnings();
    blocks.add(
        warnings.isEmpty()
            ? new Paragraph(AnalysisPageWords.noWarning())
            : Bullets.of(warnings.stream().map(AnalysisPageWords::warning).toList()));
    return new Section("behind", AnalysisPageWords.BEHIND, blocks);
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
