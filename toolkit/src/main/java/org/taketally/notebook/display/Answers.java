package org.taketally.notebook.display;

import java.util.ArrayList;
import java.util.List;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.model.TakeModel;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.UnansweredWords;
import org.taketally.wording.Wording;

/** Answers and their tables. */
final class Answers {

  private Answers() {}

  /** Every question with its answer in short, and what isn't answered. */
  static Shown analysis(Analysis analysis) {
    List<Shown> parts = new ArrayList<>(List.of(Fits.model(TakeModel.of(analysis.fit().model()))));
    for (Answer answer : analysis.answers()) {
      AnswerWords words = Wording.of(answer);
      parts.add(Shown.heading(words.question()));
      parts.add(Shown.paragraph(words.headline()));
    }
    List<Shown> missing =
        analysis.unanswered().stream()
            .map(each -> Shown.paragraph(UnansweredWords.sentence(each)))
            .toList();
    if (!missing.isEmpty()) {
      parts.add(Shown.folded("Not answered", Shown.all(missing)));
    }
    return Shown.all(parts);
  }

  static Shown answer(Answer answer) {
    AnswerWords words = Wording.of(answer);
    List<Shown> parts = new ArrayList<>(List.of(Shown.heading(words.question())));
    words.paragraphs().stream().map(Shown::paragraph).forEach(parts::add);
    List<AnswerTable> tables = words.tables();
    for (int i = 0; i < tables.size(); i++) {
      Shown table = table(tables.get(i));
      parts.add(i == 0 ? table : Shown.folded(tables.get(i).caption(), table));
    }
    return Shown.all(parts);
  }

  static Shown table(AnswerTable whole) {
    AnswerTable table = whole.withoutRepeats();
    return new Shown("<div class=\"tt-scroll\">" + table.toHtml() + "</div>\n", table.toText());
  }
}
