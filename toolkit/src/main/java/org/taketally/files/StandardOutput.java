package org.taketally.files;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.util.Optional;

/**
 * What is printed, which Java lets fail in silence.
 *
 * @param printed where lines are printed
 * @param beneath the same without Java's silence
 */
public record StandardOutput(PrintStream printed, OutputStream beneath) {

  /**
   * That of this process.
   *
   * @return its standard output
   */
  public static StandardOutput ofProcess() {
    return new StandardOutput(System.out, new FileOutputStream(FileDescriptor.out));
  }

  /**
   * Why not all could be printed.
   *
   * @return empty if all was, or if the reader left early, as {@code head} does: it has what it
   *     wanted
   */
  public Optional<String> lost() {
    if (!printed.checkError()) {
      return Optional.empty();
    }
    try {
      beneath.write('\n');
      beneath.flush();
      return Optional.of("for a time");
    } catch (IOException failed) {
      String why = String.valueOf(failed.getMessage());
      return why.contains("pipe") ? Optional.empty() : Optional.of(why);
    }
  }
}
