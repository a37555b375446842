package org.taketally.app;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.util.Optional;

/**
 * What is printed, which Java lets fail in silence: a full disk behind {@code > file} is told.
 *
 * @param printed where commands print
 * @param beneath the same without Java's silence
 */
record StandardOutput(PrintStream printed, OutputStream beneath) {

  static final StandardOutput INSTANCE =
      new StandardOutput(System.out, new FileOutputStream(FileDescriptor.out));

  /**
   * Says if not all could be printed.
   *
   * @param status of the command
   * @param err where to say it
   * @return the same status, unless something was lost; a reader that left early, as {@code head}
   *     does, has what it wanted
   */
  int whole(int status, PrintWriter err) {
    Optional<String> reason = printed.checkError() ? reason() : Optional.empty();
    reason.ifPresent(
        why -> {
          err.println(
              "taketally: standard output: found that not all could be written (%s), expected room for it; make room or name another place, and run the command again"
                  .formatted(why));
          err.flush();
        });
    return reason.isPresent() && status == ExitStatus.FINE ? ExitStatus.USAGE : status;
  }

  private Optional<String> reason() {
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
