package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Collection;
import org.taketally.files.Content;
import org.taketally.files.FileSet;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Where a text to be edited by a person goes: a file in UTF-8, or standard output. */
final class TextOut {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description =
          "Write it to this file (UTF-8; safer than > on Windows); otherwise it is printed.")
  private Path file;

  @Mixin private ReplaceOption replace = new ReplaceOption();

  /** Whether a file was named. */
  boolean toFile() {
    return file != null;
  }

  /** Prints or writes a text, never over a file that was read. */
  void give(String text, Collection<Path> inputs) throws IOException {
    PrintWriter out = command.commandLine().getOut();
    if (file == null) {
      out.print(text);
    } else {
      FileSet.write(file, replace.guard(inputs), Content.text(text));
      out.println("written to " + file);
    }
    out.flush();
  }
}
