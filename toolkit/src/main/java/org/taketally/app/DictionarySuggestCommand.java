package org.taketally.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.taketally.records.DictionaryProposal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Proposes a dictionary: JSON to a file or standard output, reasons and questions beside it. */
@Command(
    name = "suggest",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Proposes a dictionary for your sheets. Says what each entry rests on and what it couldn't"
          + " decide; read and correct the file, then name it with --dictionary.",
      "Example: taketally dictionary suggest sheet.csv --out dictionary.json"
    })
final class DictionarySuggestCommand implements Callable<Integer> {

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Sheets as you keep them.")
  private List<Path> files = new ArrayList<>();

  @Mixin private TextOut out = new TextOut();

  @Option(
      names = "--ask",
      negatable = true,
      description =
          "Ask what could not be decided, one question after the other (done unasked on a terminal"
              + " with --out FILE).")
  private Boolean ask;

  @Spec private CommandSpec spec;

  @Override
  @SuppressWarnings(
      "SystemConsoleNull") // from Java 22 on it asks, and reads nothing where nobody is
  public Integer call() throws IOException {
    files.forEach(file -> InputFile.require(spec.commandLine(), file));
    DictionaryProposal proposal = DictionaryProposal.of(files);
    PrintWriter err = spec.commandLine().getErr();
    bySheet(proposal, "because ", proposal::reasons, err);
    if (ask == null ? out.toFile() && System.console() != null : ask) {
      new Questions(
              new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset())), err)
          .ask(proposal);
    }
    out.give(proposal.json(), files);
    bySheet(proposal, "open: ", proposal::questions, err);
    err.flush();
    return proposal.questions().isEmpty() ? ExitStatus.FINE : ExitStatus.NEEDS_A_PERSON;
  }

  /** The sentences of each sheet, below its name. */
  private static void bySheet(
      DictionaryProposal proposal,
      String label,
      Function<String, List<String>> sentences,
      PrintWriter err) {
    for (String sheet : proposal.sheets()) {
      List<String> own = sentences.apply(sheet);
      if (!own.isEmpty()) {
        err.println(sheet);
      }
      own.forEach(one -> err.println("  " + label + one));
    }
  }
}
