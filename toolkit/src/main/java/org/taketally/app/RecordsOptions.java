package org.taketally.app;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.terms.Provenance;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Which records to read, and how: the same for every command that reads records. */
final class RecordsOptions {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "Records: CSV or XLSX, one file or several seasons at once.")
  private List<Path> files = new ArrayList<>();

  GraftRecords read() {
    for (Path file : files) {
      requireFile(file);
    }
    return reader().read(files);
  }

  /** Says on standard error how many rows were read, kept and set aside. */
  void report(GraftRecords records) {
    Provenance provenance = records.provenance();
    PrintWriter err = commandLine().getErr();
    err.printf(
        Locale.ROOT,
        "%,d rows read = %,d kept + %,d set aside; %,d grafts, %,d takes%n",
        provenance.rowsRead(),
        provenance.rowsKept(),
        provenance.rowsSetAside(),
        records.grafts(),
        records.takes());
    if (provenance.rowsSetAside() > 0) {
      err.println("run \"taketally check\" on the same files to see why rows were set aside");
    }
    err.flush();
  }

  private RecordsReader reader() {
    return RecordsReader.withDefaults();
  }

  private void requireFile(Path file) {
    if (!Files.exists(file)) {
      throw new ParameterException(
          commandLine(), "no file \"%s\"; check the name and the folder".formatted(file));
    }
  }

  private CommandLine commandLine() {
    return command.commandLine();
  }
}
