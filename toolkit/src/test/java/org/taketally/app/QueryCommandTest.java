package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Records asked of a database on the command line. */
class QueryCommandTest {

  private static final Path WALNUT =
      Path.of(System.getProperty("taketally.root"), "datasets/halden-bay-walnut/grafts-2023.csv");

  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(Object... arguments) {
    CommandLine commands = Taketally.commandLine();
    commands.setOut(new PrintWriter(out));
    commands.setErr(new PrintWriter(err));
    return commands.execute(Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
  }

  @Test
  void a_query_takes_the_place_of_files() {
    String query = "SELECT * FROM '%s' WHERE site = 'Cove Lane'".formatted(WALNUT);
    assertThat(run("check", "--query", query, "--crop", "walnut")).isEqualTo(ExitStatus.FINE);
    String checked = out.toString();
    assertThat(checked).contains("rows read = ", "+ 0 set aside");
    assertThat(
            run(
                "analyse",
                "--query",
                query,
                "--adjust-for",
                "rootstock",
                "--vary-by",
                "cultivar",
                "--json",
                folder.resolve("answers.json")))
        .as(err.toString())
        .isEqualTo(ExitStatus.FINE);
  }

  @Test
  void what_is_missing_or_too_much_is_said() {
    assertThat(run("check")).isEqualTo(ExitStatus.USAGE);
    assertThat(err.toString()).contains("at least one file of records, or a --query");
    assertThat(run("check", WALNUT, "--query", "SELECT 1")).isEqualTo(ExitStatus.USAGE);
    assertThat(err.toString()).contains("expected one of the two");
    assertThat(run("check", "--query", "SELECT 1", "--url", "jdbc:nowhere:x"))
        .isEqualTo(ExitStatus.USAGE);
    assertThat(err.toString()).contains("found --url jdbc:nowhere:x", "--driver");
    assertThat(run("check", "--query", "SELECT 1", "--driver", folder.resolve("no.jar")))
        .isEqualTo(ExitStatus.USAGE);
    assertThat(run("check", "--query", "SELECT * FROM nowhere"))
        .isEqualTo(ExitStatus.NEEDS_A_PERSON);
    assertThat(err.toString()).contains("nowhere", "try it in the database's own program first");
  }
}
