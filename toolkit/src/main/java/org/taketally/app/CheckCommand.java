package org.taketally.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.taketally.files.Content;
import org.taketally.files.FileSet;
import org.taketally.publish.CheckPage;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says whether records can be trusted. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Says whether graft records can be trusted: every problem, and what to do.")
final class CheckCommand implements Callable<Integer> {

  @Mixin private RecordsOptions input;
  @Mixin private OutFolder out;
  @Spec private CommandSpec spec;

  @Option(
      names = "--all",
      description = "Print every problem, also those that come often in a column.")
  private boolean all;

  @Override
  public Integer call() throws IOException {
    Printing printing = new Printing(spec.commandLine().getOut());
    Path aside = Files.createTempFile("taketally-set-aside", ".csv");
    try {
      if (input.countedAgain()) {
        GraftRecords records = input.read();
        Assessments counts = input.counted(records);
        say(records.check(), records.check().summary().and(counts.check().summary()), printing);
        printing.paragraphs(RecordsOptions.whatWasCounted(counts));
        aside(records.check(), Content.text(records.setAside().csv()), printing);
        if (counts.setAside().size() > 0) {
          out.setAside(counts, input.files(), printing);
        }
        page(CheckPage.of(records.check(), counts.check()), printing);
        return end(
            Stream.concat(records.problems().stream(), counts.check().problems().stream()),
            printing);
      }
      RecordsCheck check = input.scan(aside);
      say(check, check.summary(), printing);
      aside(check, to -> Files.copy(aside, to), printing);
      page(CheckPage.of(check), printing);
      return end(check.problems().stream(), printing);
    } finally {
      Files.deleteIfExists(aside);
    }
  }

  private void say(RecordsCheck check, ProblemSummary problems, Printing printing) {
    for (Severity severity : Severity.values()) {
      printing.problems(problems, severity, all);
    }
    printing.heading("Counts");
    printing.paragraphs(RecordsOptions.counts(check));
  }

  private void aside(RecordsCheck check, Content aside, Printing printing) throws IOException {
    if (check.provenance().rowsSetAside() > 0) {
      out.setAside(aside, input.files(), printing);
    }
  }

  private void page(CheckPage check, Printing printing) throws IOException {
    if (out.asked()) {
      FileSet page = out.files("check", input.files());
      page.add("check.html", check.html());
      printing.line("Written: " + page.write().get(0));
    }
  }

  private static int end(Stream<Problem> problems, Printing printing) {
    boolean needsAPerson = problems.anyMatch(problem -> problem.severity() != Severity.NOTE);
    printing.paragraphs(
        needsAPerson ? "A person should look at the problems above." : "Nothing needs a person.");
    return needsAPerson ? ExitStatus.NEEDS_A_PERSON : ExitStatus.FINE;
  }
}
