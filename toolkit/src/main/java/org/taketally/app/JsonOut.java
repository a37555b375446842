package org.taketally.app;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Where the result goes for other programs, if anywhere. */
final class JsonOut {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--json",
      paramLabel = "FILE",
      description = "Write the result for other programs; - for standard output.")
  private Path file;

  /** Whether the result was asked for. */
  boolean asked() {
    return file != null;
  }

  /** Whether words must stay away from standard output. */
  boolean alone() {
    return file != null && file.toString().equals("-");
  }

  /** Writes the result where it was asked for, never over a file that was read. */
  void write(JsonObject result, OutFolder out, Collection<Path> inputs) throws IOException {
    if (file == null) {
      return;
    }
    String text = new GsonBuilder().serializeNulls().setPrettyPrinting().create().toJson(result);
    Printing printing = new Printing(command.commandLine().getOut());
    if (alone()) {
      printing.line(text);
    } else {
      out.write(file, inputs, text + "\n");
      printing.paragraphs("Result written to " + file);
    }
  }
}
