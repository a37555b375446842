package org.taketally.app;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.taketally.files.FileSet;
import org.taketally.publish.CheckPage;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
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
    GraftRecords records = input.read();
    Printing printing = new Printing(spec.commandLine().getOut());
    for (Severity severity : Severity.values()) {
      printing.problems(records, severity, all);
    }
    printing.heading("Counts");
    printing.paragraphs(RecordsOptions.counts(records.check()));
    Optional<Assessments> counts = input.assessments(records);
    if (records.provenance().rowsSetAside() > 0) {
      out.setAside(records, input.files(), printing);
    }
    if (counts.isPresent() && counts.get().setAside().size() > 0) {
      out.setAside(counts.get(), input.files(), printing);
    }
    if (out.asked()) {
      FileSet page = out.files("check", input.files());
      page.add("check.html", CheckPage.of(records).html());
      printing.line("Written: " + page.write().get(0));
    }
    boolean needsAPerson =
        Stream.concat(
                records.problems().stream(),
                counts.stream().flatMap(read -> read.check().problems().stream()))
            .anyMatch(problem -> problem.severity() != Severity.NOTE);
    printing.paragraphs(
        needsAPerson ? "A person should look at the problems above." : "Nothing needs a person.");
    return needsAPerson ? ExitStatus.NEEDS_A_PERSON : ExitStatus.FINE;
  }
}
