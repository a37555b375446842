package org.taketally.app;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.Absent;
import org.taketally.answers.Analysis;
import org.taketally.answers.Answer;
import org.taketally.records.GraftRecords;
import org.taketally.records.ProblemSummary;
import org.taketally.terms.Severity;

/** Plain lines for a terminal, wrapped at a readable width. */
final class Printing {

  private static final int WIDTH = 96;
  private static final int OFTEN = 10;

  private final PrintWriter out;

  Printing(PrintWriter out) {
    this.out = out;
  }

  void analysis(Analysis analysis, List<String> choices) {
    for (Answer answer : analysis.answers()) {
      heading(answer.title());
      paragraphs(answer.text());
    }
    for (Absent absent : analysis.absent()) {
      heading(absent.question());
      paragraphs(absent.reason());
    }
    if (!choices.isEmpty() || !analysis.changes().isEmpty()) {
      heading("What was taken into account");
      choices.forEach(this::paragraphs);
      analysis.changes().forEach(this::paragraphs);
    }
    if (!analysis.fit().warnings().isEmpty()) {
      heading("What the fit warns of (see docs/when-a-fit-warns.md)");
      analysis.fit().warnings().forEach(warning -> paragraphs(warning.sentence()));
    }
    out.flush();
  }

  /**
   * Problems of one severity, a line each. Errors stand in full; of others, a kind that comes more
   * often than {@value #OFTEN} times in a column is said once, unless all are asked for.
   */
  void problems(GraftRecords records, Severity severity, boolean all) {
    List<String> lines = new ArrayList<>();
    for (ProblemSummary.Group group : records.summary().groups()) {
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
      wrap(paragraph);
    }
    out.flush();
  }

  private void wrap(String paragraph) {
    StringBuilder line = new StringBuilder();
    for (String word : paragraph.split(" ", -1)) {
      if (line.length() > 0 && line.length() + 1 + word.length() > WIDTH) {
        out.println(line);
        line.setLength(0);
        line.append("  ");
      } else if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    out.println(line);
  }
}
