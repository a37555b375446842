package org.taketally.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import org.taketally.records.DictionaryProposal;
import org.taketally.records.OpenQuestion;

/** Asks the open questions of a proposed dictionary one by one. */
final class Questions {

  private final BufferedReader in;
  private final PrintWriter out;

  Questions(BufferedReader in, PrintWriter out) {
    this.in = in;
    this.out = out;
  }

  /** Settles what the person answers; Enter leaves a question open, so does the end of input. */
  void ask(DictionaryProposal proposal) throws IOException {
    List<OpenQuestion> open =
        proposal.open().stream().filter(question -> !question.choices().isEmpty()).toList();
    for (int i = 0; i < open.size(); i++) {
      out.println();
      out.println("Question %d of %d. %s".formatted(i + 1, open.size(), open.get(i).sentence()));
      List<String> choices = open.get(i).choices();
      for (int choice = 0; choice < choices.size(); choice++) {
        out.println("  %d  %s".formatted(choice + 1, choices.get(choice)));
      }
      int chosen = answer(choices.size());
      if (chosen > 0) {
        open.get(i).settle(chosen - 1);
      }
    }
  }

  /** The number typed; 0 for none. */
  private int answer(int choices) throws IOException {
    while (true) {
      out.print("1 to %d, or Enter to leave it open: ".formatted(choices));
      out.flush();
      String typed = in.readLine();
      if (typed == null || typed.isBlank()) {
        out.println();
        return 0;
      }
      if (typed.strip().matches("\\d{1,3}")) {
        int number = Integer.parseInt(typed.strip());
        if (number >= 1 && number <= choices) {
          return number;
        }
      }
      out.println("found \"%s\", expected a number from 1 to %d".formatted(typed.strip(), choices));
    }
  }
}
