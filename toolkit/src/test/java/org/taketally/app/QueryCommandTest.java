package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records asked of a database on the command line. */
class QueryCommandTest {

  private static final Path WALNUT =
      Path.of(System.getProperty("taketally.root"), "datasets/halden-bay-walnut/grafts-2023.csv");

  @TempDir private Path folder;

  private static CommandRun run(Object... arguments) {
    return CommandRun.of(arguments);
  }

  private static void refused(int status, CommandRun outcome, String... said) {
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(status);
    assertThat(outcome.err()).contains(said);
  }

  @Test
  void a_query_takes_the_place_of_files() {
    String query = "SELECT * FROM '%s' WHERE site = 'Cove Lane'".formatted(WALNUT);
    CommandRun checked = run("check", "--query", query, "--crop", "walnut");
    assertThat(checked.status()).as(checked.err()).isEqualTo(ExitStatus.FINE);
    assertThat(checked.out()).contains("rows read = ", "+ 0 set aside");
    CommandRun analysed =
        run(
            "analyse",
            "--query",
            query,
            "--adjust-for",
            "rootstock",
            "--vary-by",
            "cultivar",
            "--json",
            folder.resolve("answers.json"));
    assertThat(analysed.status()).as(analysed.err()).isEqualTo(ExitStatus.FINE);
  }

  @Test
  void what_is_missing_or_too_much_is_said() {
    refused(ExitStatus.USAGE, run("check"), "at least one file of records, or a --query");
    refused(
        ExitStatus.USAGE, run("check", WALNUT, "--query", "SELECT 1"), "expected one of the two");
    refused(
        ExitStatus.USAGE,
        run("check", "--query", "SELECT 1", "--url", "jdbc:nowhere:x"),
        "found --url jdbc:nowhere:x",
        "--driver");
    refused(
        ExitStatus.USAGE,
        run("check", "--query", "SELECT 1", "--driver", folder.resolve("no.jar")),
        "no.jar");
    refused(
        ExitStatus.NEEDS_A_PERSON,
        run("check", "--query", "SELECT * FROM nowhere"),
        "nowhere",
        "try it in the database's own program first");
  }

  @Test
  void a_driver_that_is_none_is_named_and_not_the_database() throws IOException {
    Path empty = folder.resolve("empty.jar");
    try (ZipOutputStream jar = new ZipOutputStream(Files.newOutputStream(empty))) {
      jar.putNextEntry(new ZipEntry("readme.txt"));
    }
    for (Path driver : List.of(WALNUT, folder, empty)) {
      CommandRun outcome =
          run("check", "--query", "SELECT 1", "--url", "jdbc:some:where", "--driver", driver);
      refused(
          ExitStatus.USAGE,
          outcome,
          "--driver " + driver,
          driver.equals(empty) ? "found a jar without a JDBC driver" : "found no jar",
          "duckdb_jdbc-VERSION.jar");
      assertThat(outcome.err()).doesNotContain("found --url");
    }
  }
}
