package org.taketally.app;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.taketally.analysis.Analysis;
import org.taketally.analysis.CountsAlone;
import org.taketally.answers.Answer;
import org.taketally.answers.adjusted.ProfileRanges;
import org.taketally.model.FitWarning;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Severity;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.ModelWords;
import org.taketally.wording.ProfileWords;
import org.taketally.wording.UnansweredWords;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.SeasonWords;

/** Plain lines for a terminal, wrapped at a readable width. */
final class Printing {

  private static final int WIDTH = 96;
  private static final int OFTEN = 10;

  private final PrintWriter out;

  Printing(PrintWriter out) {
    this.out = out;
  }

  /** Every question with its answer in a sentence, then what each rests on. */
  void analysis(Analysis analysis, List<String> choices) {
    answers(analysis.answers());
    points("What these records don't answer", absent(analysis));
    points(
        "What was taken into account",
        Stream.concat(choices.stream(), analysis.changes().stream().map(ModelWords::of)).toList());
    points(
        "What the fit warns of (see docs/when-a-fit-warns.md)",
        analysis.fit().warnings().stream().map(FitWarning::sentence).toList());
    out.flush();
  }

  /** The one answer that counts alone give, and why there are no others. */
  void counts(CountsAlone counts) {
    answers(List.of(counts.verdict()));
    points("What these records don't answer", List.of(Words.sentence(counts.why())));
    out.flush();
  }

  private void answers(List<? extends Answer> found) {
    heading("In short");
    List<AnswerWords> answers = found.stream().map(Wording::of).toList();
    for (AnswerWords answer : answers) {
      paragraphs(answer.question());
      indented(answer.headline());
    }
    paragraphs("");
    paragraphs(SeasonWords.in(Language.ENGLISH).sure().likely());
    answers.forEach(answer -> points(answer.question(), answer.more()));
  }

  private static List<String> absent(Analysis analysis) {
    return analysis.unanswered().stream().map(UnansweredWords::sentence).toList();
  }

  private void points(String title, List<String> points) {
    if (!points.isEmpty()) {
      heading(title);
      points.forEach(this::paragraphs);
    }
  }

  private void indented(String text) {
    wrap(text, "    ", "    ");
    out.flush();
  }

  /**
   * Problems of one severity, a line each. Errors stand in full; of others, a kind that comes more
   * often than {@value #OFTEN} times in a column is said once, unless all are asked for.
   */
  void problems(ProblemSummary summary, Severity severity, boolean all) {
    List<String> lines = new ArrayList<>();
    for (ProblemSummary.Group group : summary.groups()) {
      if (group.first().get(0).severity() != severity) {
        continue;
      }
      if (all || severity == Severity.ERROR || group.count() <= OFTEN) {
        group.first().forEach(problem -> lines.add(problem.sentence()));
        if (group.first().size() < group.count()) {
          lines.add(group.sentence());
        }
      } else {
        lines.add(group.sentence());
      }
    }
    if (!lines.isEmpty()) {
      heading(
          switch (severity) {
            case ERROR -> "Rows set aside until repaired";
            case CHECK -> "Used, but a person should look";
            case NOTE -> "Notes";
          });
      lines.forEach(out::println);
      out.flush();
    }
  }

  void profile(ProfileRanges ranges) {
    heading("Ranges by profile likelihood (logits)");
    paragraphs(ProfileWords.text(ranges));
  }

  /** A line that is not wrapped, such as a command to copy. */
  void line(String text) {
    out.println(text);
    out.flush();
  }

  void heading(String title) {
    out.println();
    out.println(title);
    out.println("-".repeat(title.length()));
  }

  /** Text with its own line feeds kept and longer lines wrapped. */
  void paragraphs(String text) {
    for (String paragraph : text.split("\n", -1)) {
      wrap(paragraph, "", "  ");
    }
    out.flush();
  }

  /** Points one below the other. */
  void bullets(List<String> points) {
    points.forEach(point -> wrap(point, "- ", "  "));
    out.flush();
  }

  private void wrap(String text, String first, String others) {
    StringBuilder line = new StringBuilder(first);
    boolean empty = true;
    for (String word : text.split(" (?!%)", -1)) {
      if (!empty && line.length() + 1 + word.length() > WIDTH) {
        out.println(line);
        line.setLength(0);
        line.append(others);
      } else if (!empty) {
        line.append(' ');
      }
      line.append(word);
      empty = false;
    }
    out.println(line);
  }
}
