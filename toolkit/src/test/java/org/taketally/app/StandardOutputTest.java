package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.taketally.files.StandardOutput;
import picocli.CommandLine;

/** What can't be printed is told, and isn't taken for done. */
class StandardOutputTest {

  private final StringWriter err = new StringWriter();

  private int status(OutputStream to, int status) {
    PrintStream printed = new PrintStream(to);
    printed.println("answers");
    CommandLine commands = Taketally.commandLine().setErr(new PrintWriter(err));
    return Taketally.printedWhole(status, new StandardOutput(printed, to), commands);
  }

  private static OutputStream failing(String why) {
    return new OutputStream() {
      @Override
      public void write(int sign) throws IOException {
        throw new IOException(why);
      }
    };
  }

  @Test
  void a_full_disk_is_told() {
    assertThat(status(failing("No space left on device"), ExitStatus.FINE))
        .isEqualTo(ExitStatus.USAGE);
    assertThat(err.toString().strip())
        .isEqualTo(
            "taketally: standard output: found that not all could be written (No space left on device), expected room for it; make room or name another place, and run the command again");
  }

  @Test
  void other_reasons_to_end_are_kept() {
    assertThat(status(failing("No space left on device"), ExitStatus.CANNOT_BE_COMPUTED))
        .isEqualTo(ExitStatus.CANNOT_BE_COMPUTED);
  }

  @Test
  void a_reader_that_left_early_has_what_it_wanted() {
    assertThat(status(failing("Broken pipe"), ExitStatus.FINE)).isEqualTo(ExitStatus.FINE);
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void nothing_is_said_where_all_was_printed() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThat(status(out, ExitStatus.NEEDS_A_PERSON)).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("answers" + System.lineSeparator());
    assertThat(err.toString()).isEmpty();
  }
}
