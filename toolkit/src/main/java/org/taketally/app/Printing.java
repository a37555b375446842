package org.taketally.app;

import java.io.PrintWriter;
import java.util.List;
import org.taketally.answers.Absent;
import org.taketally.answers.Analysis;
import org.taketally.answers.Answer;

/** Plain lines for a terminal, wrapped at a readable width. */
final class Printing {

  private static final int WIDTH = 96;

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
    if (!choices.isEmpty()) {
      heading("What was taken into account");
      choices.forEach(this::paragraphs);
    }
    if (!analysis.fit().warnings().isEmpty()) {
      heading("What the fit warns of (see docs/when-a-fit-warns.md)");
      analysis.fit().warnings().forEach(warning -> paragraphs(warning.sentence()));
    }
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
