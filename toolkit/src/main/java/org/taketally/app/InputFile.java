package org.taketally.app;

import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A file named on the command line to be read. */
final class InputFile {

  private InputFile() {}

  /** Says so in a sentence if there is no such file. */
  static void require(CommandLine commandLine, Path file) {
    if (!Files.exists(file)) {
      throw new ParameterException(
          commandLine, "no file \"%s\"; check the name and the folder".formatted(file));
    }
  }
}
