package org.taketally.app;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import org.taketally.files.Guard;
import picocli.CommandLine.Option;

/** Leave to write over what is there, for every command that writes files. */
final class ReplaceOption {

  @Option(
      names = "--replace",
      description =
          "Write over files that Taketally did not write, or that were changed since (never over a"
              + " file being read).")
  private boolean replace;

  /** What may be written beside these files, which are being read. */
  Guard guard(Collection<Path> inputs) {
    return new Guard(List.copyOf(inputs), replace);
  }
}
