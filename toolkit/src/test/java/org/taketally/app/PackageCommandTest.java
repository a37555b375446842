package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** {@code package} as a person types it. */
class PackageCommandTest {

  private static final Path COUNTS =
      Path.of(System.getProperty("taketally.root"), "datasets/historic-counts/hickory-1923");

  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(Object... arguments) {
    CommandLine commands = Taketally.commandLine();
    commands.setOut(new PrintWriter(out));
    commands.setErr(new PrintWriter(err));
    return commands.execute(Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
  }

  private int pack(String licence) {
    return run(
        "package",
        COUNTS.resolve("grafts.csv"),
        "--dictionary",
        COUNTS.resolve("dictionary.json"),
        "--title",
        "Hickory 1923",
        "--by",
        "W. G. Bixby",
        "--licence",
        licence,
        "--vary-by",
        "cultivar",
        "--adjust-for",
        "rootstock",
        "--seed",
        "3",
        "--out",
        folder.resolve("open"));
  }

  @Test
  void writes_a_package_that_check_reads_back() throws IOException {
    assertThat(pack("CC0-1.0")).as(err.toString()).isEqualTo(ExitStatus.FINE);
    assertThat(out.toString()).contains("described in", "ask your members");
    Path open = folder.resolve("open");
    var described =
        JsonParser.parseString(Files.readString(open.resolve("datapackage.json")))
            .getAsJsonObject();
    assertThat(described.getAsJsonObject("provenance").get("options").toString())
        .contains("\"package\",\"grafts.csv\",\"--dictionary\",\"dictionary.json\"")
        .doesNotContain(folder.getFileName().toString(), "\"open\"");
    assertThat(described.getAsJsonObject("provenance").get("seed").getAsInt()).isEqualTo(3);
    assertThat(
            run(
                "check",
                open.resolve("records.csv"),
                "--dictionary",
                open.resolve("dictionary.json")))
        .isEqualTo(ExitStatus.FINE);
    assertThat(out.toString()).contains("272 grafts assessed, 140 took");
  }

  @Test
  void asks_under_which_licence() {
    assertThat(pack("mine")).isEqualTo(ExitStatus.USAGE);
    assertThat(err.toString())
        .contains("found licence \"mine\", expected one of CC0-1.0, CC-BY-4.0");
    assertThat(run("package", COUNTS.resolve("grafts.csv"))).isEqualTo(ExitStatus.USAGE);
    assertThat(err.toString()).contains("--title", "--by", "--licence");
  }
}
