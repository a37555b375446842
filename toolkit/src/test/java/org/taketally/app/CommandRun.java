package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;
import picocli.CommandLine;

/**
 * What a command did, typed as a person would.
 *
 * @param status exit status
 * @param out what stood on standard output
 * @param err what stood beside it
 */
record CommandRun(int status, String out, String err) {

  static CommandRun of(Object... arguments) {
    return of(Taketally.commandLine(), arguments);
  }

  static CommandRun of(CommandLine commands, Object... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    commands.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int status =
        commands.execute(Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
    return new CommandRun(status, out.toString(), err.toString());
  }

  /** Without a stack trace, which no command may ever show. */
  CommandRun said() {
    assertThat(out + err).doesNotContain("Exception").doesNotContain("\tat ");
    return this;
  }

  /** With line breaks and runs of blanks in the output as one blank. */
  CommandRun flat() {
    return new CommandRun(status, out.replaceAll("\\s+", " "), err);
  }
}
